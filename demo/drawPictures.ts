/**
 * Draws the invented photographs of the practice unit and writes what the page needs beside the unit file.
 * The noise is seeded and nothing is read but yard-loader.json, so the pictures come out the same each time. Names after the command draw those pictures only.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import sharp from 'sharp'
import { pictures } from './pictures/pictures.ts'
import { practice } from './pictures/practice.ts'

const here = (path: string) => new URL(path, import.meta.url)
const unit = JSON.parse(readFileSync(here('yard-loader.json'), 'utf8'))
const wanted = process.argv.slice(2)

for (const { file, most, draw } of pictures(unit)) {
  if (wanted.length > 0 && !wanted.includes(file)) continue
  const { pixels, width, height, cut, shownWidth } = draw()
  const picture = sharp(pixels, { raw: { width, height, channels: 3 } })
    .extract(cut)
    .resize({ width: shownWidth, kernel: 'lanczos3' })
    .sharpen({ sigma: 0.6, m1: 0.4, m2: 1 })
  let quality = 86
  let bytes = await picture.clone().webp({ quality, effort: 5 }).toBuffer()
  while (bytes.length > most && quality > 40) {
    quality -= 4
    bytes = await picture.clone().webp({ quality, effort: 5 }).toBuffer()
  }
  writeFileSync(here(`../packages/web/public/demo/${file}`), bytes)
  process.stdout.write(`${file}: ${Math.round(bytes.length / 1000)} kB at quality ${quality}\n`)
}
writeFileSync(here('practice.json'), `${JSON.stringify(practice(unit), null, 2)}\n`)
