/** Beside each hole on the picture a small upright bar: what its bolt holds, against the line of its target. */
import type { PicturePoint } from '../face/stage/view.ts'
import type { Bar } from './steps.ts'

type Props = { bars: readonly Bar[]; full: number; places: ReadonlyMap<string, PicturePoint> }

export function GaugeLayer({ bars, full, places }: Props) {
  return (
    <>
      {bars.map(({ hole, load, target }) => {
        const place = places.get(hole)
        return place === undefined ? null : (
          <span
            key={hole}
            class="gauge"
            aria-hidden="true"
            style={{
              left: `${place.x * 100}%`,
              top: `${place.y * 100}%`,
              '--load': `${(100 * load) / full}%`,
              '--goal': `${(100 * target) / full}%`,
            }}
          />
        )
      })}
    </>
  )
}
