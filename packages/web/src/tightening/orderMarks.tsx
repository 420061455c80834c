/** The order on the picture: each hole's turn in the pass, the way from one to the next, what each bolt holds as a bar beside it. */
import type { OrderAnswer, TighteningAnswer } from '@gripbook/engine'
import type { Mark, Picture } from '../face/marks.ts'
import type { PicturePoint } from '../face/stage/view.ts'
import { words as shared } from '../words/index.ts'
import { words } from '../words/tightening.ts'
import { turnsOf, wayOf, wholeWay } from './steps.ts'

type Places = ReadonlyMap<string, PicturePoint>

/** The name of each hole at the corner of its mark, which shows the turn; and a ring round the one that is turned. */
export function HoleTags({ places, now }: { places: Places; now: string | null }) {
  return (
    <>
      {[...places].map(([hole, { x, y }]) => (
        <span
          key={hole}
          class={`hole-tag${hole === now ? ' hole-tag--now' : ''}`}
          aria-hidden="true"
          dir="auto"
          style={{ left: `${x * 100}%`, top: `${y * 100}%` }}
        >
          <span>{hole}</span>
        </span>
      ))}
    </>
  )
}

/** While there is no order: the holes by their names. */
export function plainMarks(places: Places): Mark[] {
  return [...places].map(([hole, place]) => ({
    hole,
    ...place,
    shape: 'noted',
    badge: null,
    under: [],
    dim: false,
    said: shared.face.hole(hole),
  }))
}

/** `step`: the one that is looked at, from 0; null: the order as a whole. */
export function orderMarks(answer: TighteningAnswer, order: OrderAnswer, step: number | null, places: Places): Mark[] {
  const pass = step === null ? null : (order.steps[step]?.pass ?? 1)
  const turns = pass === null ? new Map(wholeWay(order).map((hole, i) => [hole, i + 1])) : turnsOf(order, pass)
  const loads = step === null ? order.steps.at(-1)?.loads : order.steps[step]?.loads
  const done = new Set(
    order.steps.filter((one, i) => step === null || (one.pass === pass && i <= step)).map(({ hole }) => hole),
  )
  return answer.holes.flatMap((hole, i): Mark[] => {
    const place = places.get(hole)
    if (place === undefined) return []
    const turn = turns.get(hole)
    const load = words.load(loads?.[i] ?? 0)
    return [
      {
        hole,
        ...place,
        shape: done.has(hole) ? 'noted' : 'plain',
        badge: null,
        under: [],
        dim: turn === undefined,
        number: turn === undefined ? '–' : String(turn),
        said: turn === undefined ? words.markOther(hole, load) : words.markNow(hole, turn, turns.size, load),
      },
    ]
  })
}

type WayProps = { order: OrderAnswer; step: number | null; places: Places; picture: Picture }

/** The way of the wrench in a pass. */
export function WayLayer({ order, step, places, picture }: WayProps) {
  const pass = step === null ? null : order.steps[step]?.pass
  const way = pass === null || pass === undefined ? wholeWay(order) : wayOf(order, pass)
  const now = step === null ? null : step - order.steps.findIndex((one) => one.pass === pass)
  const path = (holes: readonly string[]) => {
    const points = holes.flatMap((hole) => {
      const place = places.get(hole)
      return place === undefined
        ? []
        : [`${(place.x * picture.width).toFixed(1)} ${(place.y * picture.height).toFixed(1)}`]
    })
    return points.length < 2 ? '' : `M${points.join('L')}`
  }
  // The order as a whole, or step by step: where the wrench comes from, and where it goes next.
  const gone = path(now === null ? way : way.slice(Math.max(0, now - 1), now + 1))
  const ahead = now === null ? '' : path(way.slice(now, now + 2))
  return (
    <svg
      class="cover-layer way"
      viewBox={`0 0 ${picture.width} ${picture.height}`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <path class="cover-layer__under" d={gone} />
      <path class="way__ahead-under" d={ahead} />
      <path class="way__ahead" d={ahead} />
      <path class="way__gone" d={gone} />
    </svg>
  )
}
