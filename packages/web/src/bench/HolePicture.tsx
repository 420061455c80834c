import type { Face } from '@gripbook/engine'
import type { FaceWork } from '@gripbook/record'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import { usePhotograph } from '../device/usePhotograph.ts'
import { BLANK, pictureOf, placesOf } from '../face/marks.ts'
import { words } from '../words/bench.ts'
import { words as shared } from '../words/index.ts'
import { holeWindow, wholeWindow } from './holeWindow.ts'
import './HolePicture.css'

type Props = {
  face: Face
  work: FaceWork | undefined
  /** Null: the whole face. */
  hole: string | null
  /** Holes whose step of this round is done. */
  done: ReadonlySet<string>
}

/** The photograph, or the drawn plan, zoomed on the one hole; a tap shows the whole face and goes back. */
export function HolePicture({ face, work, hole, done }: Props) {
  const picture = pictureOf(work)
  const photograph = usePhotograph(picture.photograph)
  // Each hole begins near.
  const [wholeOf, setWholeOf] = useState<string | null>(null)
  const whole = wholeOf === hole
  const [aspect, setAspect] = useState(1)
  const frame = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    const watched = new ResizeObserver(([entry]) => {
      const { width, height } = entry!.contentRect
      if (width > 0 && height > 0) setAspect(width / height)
    })
    watched.observe(frame.current!)
    return () => watched.disconnect()
  }, [])
  const places = placesOf(face, work, picture)
  const at = hole === null ? undefined : places.get(hole)
  const near = at !== undefined && !whole
  const shown = near ? holeWindow(at, [...places.values()], picture, aspect) : wholeWindow(picture)
  const said = near && hole !== null ? words.pictureOf(hole) : words.wholePicture
  // The sign keeps away from the hole that it would lie on.
  const left = at !== undefined && at[0] * picture.width > shown.x + shown.width / 2
  const short = Math.min(shown.width, shown.height)
  const size = near ? short * 0.062 : short * 0.03
  return (
    <div class="hole-picture" ref={frame}>
      <svg viewBox={`${shown.x} ${shown.y} ${shown.width} ${shown.height}`} role="img" aria-label={said}>
        {photograph.state === 'here' ? (
          <image href={photograph.url} x="0" y="0" width={picture.width} height={picture.height} />
        ) : (
          <Plan width={picture.width} height={picture.height} />
        )}
        {[...places].map(([id, [px, py]]) => (
          <Spot
            key={id}
            hole={id}
            x={px * picture.width}
            y={py * picture.height}
            size={size}
            above={py * picture.height - size * 4.4 > shown.y}
            state={id === hole ? 'now' : done.has(id) ? 'done' : 'to come'}
          />
        ))}
      </svg>
      {photograph.state === 'away' && <p class="stage__note hole-picture__note">{shared.photograph.away}</p>}
      {hole !== null && (
        <button
          type="button"
          class={`hole-picture__zoom${left ? ' hole-picture__zoom--left' : ''}`}
          aria-label={whole ? words.whole : words.zoomed}
          onClick={() => setWholeOf(whole ? null : hole)}
        >
          <span class="hole-picture__sign" aria-hidden="true">
            {whole ? words.whole : words.zoomed}
          </span>
        </button>
      )}
    </div>
  )
}

function Plan({ width, height }: { width: number; height: number }) {
  const steps = 20
  const gap = BLANK.width / steps
  const lines = Array.from({ length: steps + 1 }, (_, i) => i * gap)
  return (
    <g class="hole-picture__plan">
      <rect x="0" y="0" width={width} height={height} />
      {lines.map((at) => (
        <line key={`x${at}`} x1={at} x2={at} y1="0" y2={height} />
      ))}
      {lines
        .filter((at) => at <= height)
        .map((at) => (
          <line key={`y${at}`} x1="0" x2={width} y1={at} y2={at} />
        ))}
    </g>
  )
}

type SpotProps = {
  hole: string
  x: number
  y: number
  size: number
  state: 'now' | 'done' | 'to come'
  /** Its number stands over it, where there is room. */
  above: boolean
}

/** The one hole has a ring around it and leaves it open to the eye; the others carry their number, done ones a tick. */
function Spot({ hole, x, y, size, state, above }: SpotProps) {
  if (state === 'now')
    return (
      <g class="spot spot--now">
        <circle cx={x} cy={y} r={size * 1.9} class="spot__shade" stroke-width={size * 0.75} />
        <circle cx={x} cy={y} r={size * 1.9} class="spot__ring" stroke-width={size * 0.38} />
        <Label x={x} y={y + (above ? -3.1 : 3.1) * size} size={size * 1.35} text={hole} />
      </g>
    )
  return (
    <g class={`spot spot--${state === 'done' ? 'done' : 'to-come'}`}>
      <circle cx={x} cy={y} r={size} class="spot__disc" stroke-width={size * 0.14} />
      {state === 'done' ? (
        <path
          d={`M${x - size * 0.45} ${y + size * 0.05}l${size * 0.32} ${size * 0.35} ${size * 0.6} ${-size * 0.72}`}
          class="spot__tick"
          stroke-width={size * 0.22}
        />
      ) : (
        <text x={x} y={y} dy="0.35em" font-size={size * 1.05}>
          {hole.length > 3 ? `${hole.slice(0, 2)}…` : hole}
        </text>
      )}
    </g>
  )
}

function Label({ x, y, size, text }: { x: number; y: number; size: number; text: string }) {
  const shown = text.length > 8 ? `${text.slice(0, 7)}…` : text
  const width = Math.max(1.5, 0.7 * shown.length + 0.7) * size
  return (
    <g class="spot__label">
      <rect x={x - width / 2} y={y - size * 0.75} width={width} height={size * 1.5} rx={size * 0.3} />
      <text x={x} y={y} dy="0.35em" font-size={size * 1.05}>
        {shown}
      </text>
    </g>
  )
}
