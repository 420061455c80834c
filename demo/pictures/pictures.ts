import { bellHousing } from './bellHousing.ts'
import { bracket } from './bracket.ts'
import { connector } from './connector.ts'
import { controlBlock } from './controlBlock.ts'
import { DETAILS, FRAMES, type Frame, middle } from './frames.ts'
import { type Camera, photograph } from './photograph.ts'
import { pumpCover } from './pumpCover.ts'
import { emptyRelief, type Relief } from './relief.ts'
import { sealant } from './sealant.ts'
import { type Seat, seatsOf, type Unit } from './unit.ts'

/** `cut` is the part of the drawn points that is shown, in points; it is then brought to `shownWidth` pixels. */
type Drawn = {
  readonly pixels: Uint8Array
  readonly width: number
  readonly height: number
  readonly cut: { readonly left: number; readonly top: number; readonly width: number; readonly height: number }
  readonly shownWidth: number
}
type Picture = { readonly file: string; readonly most: number; readonly draw: () => Drawn }

/** Points are drawn finer than they are shown, so that edges come out smooth. */
const FINER = 1.5
const MARGIN = 12

type Part = (relief: Relief, camera: Camera, seats: readonly Seat[]) => void
const PARTS: Readonly<Record<string, { part: Part; over: number; exposure: number }>> = {
  'control-block': { part: controlBlock, over: 900, exposure: 0.42 },
  'pump-cover': { part: pumpCover, over: 800, exposure: 0.46 },
  'bell-housing': { part: bellHousing, over: 1100, exposure: 0.53 },
}

const DRAWN_DETAILS = [
  { ...DETAILS.bracket, part: bracket },
  { ...DETAILS.connector, part: connector },
  { ...DETAILS.sealant, part: sealant },
]

export function pictures(unit: Unit): Picture[] {
  const details = DRAWN_DETAILS.map((detail) => ({
    file: detail.file,
    most: 60_000,
    draw: () => drawn(detail, 420, 0.48, detail.part),
  }))
  const faces = FRAMES.map((frame) => {
    const { part, over, exposure } = PARTS[frame.face]!
    const draw = () => drawn(frame, over, exposure, (relief, camera) => part(relief, camera, seatsOf(unit, frame.face)))
    return { file: frame.file, most: 200_000, draw }
  })
  return [...faces, ...details]
}

function drawn(frame: Frame, above: number, exposure: number, part: (relief: Relief, camera: Camera) => void): Drawn {
  const scale = frame.pixelsPerMillimetre * FINER
  // Ground beyond the frame, for the lines of sight that end outside of it.
  const margin = Math.round(MARGIN * scale)
  const cut = {
    left: margin,
    top: margin,
    width: Math.round(frame.width * FINER),
    height: Math.round(frame.height * FINER),
  }
  const width = cut.width + 2 * margin
  const height = cut.height + 2 * margin
  const relief = emptyRelief(frame.left - margin / scale, frame.top + margin / scale, scale, width, height)
  const camera: Camera = { over: above, middle: middle(frame) }
  part(relief, camera)
  return { pixels: photograph(relief, camera, 17, exposure), width, height, cut, shownWidth: frame.width }
}
