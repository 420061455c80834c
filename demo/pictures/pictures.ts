import { bellHousing } from './bellHousing.ts'
import { controlBlock } from './controlBlock.ts'
import { FRAMES, type Frame, middle } from './frames.ts'
import { type Camera, photograph } from './photograph.ts'
import { pumpCover } from './pumpCover.ts'
import { emptyRelief, type Relief } from './relief.ts'
import type { Place } from './shapes.ts'

type Hole = { readonly id: string; readonly at: Place; readonly grip?: number | { readonly value: number } }
export type Unit = { readonly faces: readonly { readonly id: string; readonly holes: readonly Hole[] }[] }
export type Seat = { readonly id: string; readonly at: Place; readonly grip: number }
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
const FINER = Number(process.env.FINER ?? 1.5)
const MARGIN = 12

type Part = (relief: Relief, camera: Camera, seats: readonly Seat[]) => void
const PARTS: Readonly<Record<string, { part: Part; over: number; exposure: number }>> = {
  'control-block': { part: controlBlock, over: 900, exposure: 0.55 },
  'pump-cover': { part: pumpCover, over: 800, exposure: 0.6 },
  'bell-housing': { part: bellHousing, over: 1100, exposure: 0.62 },
}

export function pictures(unit: Unit): Picture[] {
  return FRAMES.map((frame) => {
    const { part, over, exposure } = PARTS[frame.face]!
    const draw = () => drawn(frame, over, exposure, (relief, camera) => part(relief, camera, seatsOf(unit, frame.face)))
    return { file: frame.file, most: 200_000, draw }
  })
}

function drawn(frame: Frame, above: number, exposure: number, part: (relief: Relief, camera: Camera) => void): Drawn {
  const scale = frame.pixelsPerMillimetre * FINER
  // Ground beyond the frame, for the lines of sight that end outside of it.
  const margin = Math.round(MARGIN * scale)
  const cut = { left: margin, top: margin, width: Math.round(frame.width * FINER), height: Math.round(frame.height * FINER) }
  const width = cut.width + 2 * margin
  const height = cut.height + 2 * margin
  const relief = emptyRelief(frame.left - margin / scale, frame.top + margin / scale, scale, width, height)
  const camera: Camera = { over: above, middle: middle(frame) }
  part(relief, camera)
  return { pixels: photograph(relief, camera, 17, exposure), width, height, cut, shownWidth: frame.width }
}

/** A seat without a grip in the file is taken to lie in the middle of the others. */
function seatsOf(unit: Unit, face: string): Seat[] {
  const holes = unit.faces.find(({ id }) => id === face)?.holes ?? []
  return holes.map(({ id, at, grip }) => ({ id, at, grip: typeof grip === 'number' ? grip : (grip?.value ?? 23) }))
}
