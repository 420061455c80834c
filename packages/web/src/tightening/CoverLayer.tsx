/** The cover as it is drawn, over the photograph: each sort of outline has its own line. */
import type { Point } from '@gripbook/engine'
import type { Picture } from '../face/marks.ts'
import type { Draft } from './draft.ts'
import { AREAS, type Area, cornersOf, type Target } from './drawn.ts'
import type { Frame } from './frame.ts'
import './CoverLayer.css'

type Props = {
  picture: Picture
  frame: Frame
  draft: Pick<Draft, 'outline' | 'openings' | 'hollows' | 'regions' | 'lines'>
  /** What is drawn at this moment, and whether it is closed. */
  target?: Target | null
  closed?: boolean
}

export function CoverLayer({ picture, frame, draft, target = null, closed = true }: Props) {
  const shapes: Target[] = [
    { at: 'outline' },
    ...AREAS.flatMap((at) => draft[at].map((_, index): { at: Area; index: number } => ({ at, index }))),
  ]
  return (
    <svg
      class="cover-layer"
      viewBox={`0 0 ${picture.width} ${picture.height}`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      {shapes.map((shape) => {
        const corners = cornersOf(draft as Draft, shape)
        if (corners.length < 2) return null
        const drawing = sameTarget(shape, target)
        const path = pathOf(corners, picture, frame, shape.at !== 'lines' && (!drawing || closed))
        return (
          <g key={keyOf(shape)} class={`cover-layer__${shape.at}${drawing ? ' cover-layer--now' : ''}`}>
            <path class="cover-layer__under" d={path} />
            <path class="cover-layer__over" d={path} />
          </g>
        )
      })}
    </svg>
  )
}

/** In pixels of the picture. */
export function pathOf(corners: readonly Point[], { width, height }: Picture, frame: Frame, closed: boolean): string {
  const points = corners.map((corner) => {
    const { x, y } = frame.toPicture(corner)
    return `${(x * width).toFixed(1)} ${(y * height).toFixed(1)}`
  })
  return `M${points.join('L')}${closed ? 'Z' : ''}`
}

function sameTarget(a: Target, b: Target | null): boolean {
  return b !== null && keyOf(a) === keyOf(b)
}

function keyOf(target: Target): string {
  return target.at === 'outline' ? 'outline' : `${target.at} ${target.index}`
}
