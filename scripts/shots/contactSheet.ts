/** Many pictures as one, each with its name under it. */
import { readFile } from 'node:fs/promises'
import sharp, { type OverlayOptions } from 'sharp'

/** px: width of each small picture, the air around it, the room for its name. */
const WIDE = 300
const AIR = 16
const NAME = 28
/** px: a sheet is about so wide. */
const SHEET = 2_000

export async function contactSheet(shots: readonly { name: string; path: string }[], to: string): Promise<void> {
  const small = await Promise.all(
    shots.map(async ({ name, path }) => {
      // From memory: the server, which runs in the same process, forbids sharp to read files.
      const { data, info } = await sharp(await readFile(path))
        .resize({ width: WIDE })
        .png()
        .toBuffer({ resolveWithObject: true })
      const said = await sharp({ text: { text: name, font: 'sans 11', dpi: 96, rgba: true } })
        .png()
        .toBuffer()
      return { data, height: info.height, said }
    }),
  )
  const columns = Math.min(small.length, Math.floor(SHEET / (WIDE + AIR)))
  const row = Math.max(...small.map(({ height }) => height)) + NAME + AIR
  const overlays = small.flatMap(({ data, height, said }, i): OverlayOptions[] => {
    const left = AIR + (i % columns) * (WIDE + AIR)
    const top = AIR + Math.floor(i / columns) * row
    return [
      { input: data, left, top },
      { input: said, left, top: top + height + 4 },
    ]
  })
  await sharp({
    create: {
      width: AIR + columns * (WIDE + AIR),
      height: AIR + Math.ceil(small.length / columns) * row,
      channels: 3,
      background: '#c9cdd0',
    },
  })
    .composite(overlays)
    .png()
    .toFile(to)
}
