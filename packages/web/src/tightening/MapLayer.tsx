/** Pressure in the joint and where the cover stands off, over the photograph, with what the shades mean. */
import type { CoverMap, Point } from '@gripbook/engine'
import { useId, useMemo } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import type { Picture } from '../face/marks.ts'
import { words } from '../words/tightening.ts'
import { BANDS, bandsOf, topOf } from './bands.ts'
import type { Frame } from './frame.ts'
import type { ShownMap } from './useTightening.ts'
import './MapLayer.css'

type Props = {
  map: CoverMap
  greatest: number
  picture: Picture
  frame: Frame
  cover: { outline: readonly Point[]; openings: readonly (readonly Point[])[] }
}

export function MapLayer({ map, greatest, picture, frame, cover }: Props) {
  const hatch = useId()
  const plate = useId()
  const { bands, gap } = useMemo(() => bandsOf(map, topOf(greatest)), [map, greatest])
  const corner = frame.toPicture([0, 0])
  // Millimetres of the face, x to the right and y upwards, onto pixels of the picture.
  const place = `matrix(${frame.scale} 0 0 ${-frame.scale} ${corner.x * picture.width} ${corner.y * picture.height})`
  return (
    <svg
      class="map-layer"
      viewBox={`0 0 ${picture.width} ${picture.height}`}
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <defs>
        <pattern id={hatch} width="3" height="3" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect class="map-hatch__ground" width="3" height="3" />
          <rect class="map-hatch__line" width="1.1" height="3" />
        </pattern>
        <clipPath id={plate}>
          <path clip-rule="evenodd" d={[cover.outline, ...cover.openings].map(polygon).join('')} />
        </clipPath>
      </defs>
      <g class="map-bands" transform={place} clip-path={`url(#${plate})`}>
        {bands.map(({ path }, i) => (
          <path key={i} class={`map-band map-band--${i + 1}`} d={path} />
        ))}
        <path d={gap.path} fill={`url(#${hatch})`} />
      </g>
    </svg>
  )
}

export function MapLegend({ cover }: { cover: ShownMap }) {
  const { settings } = useApp()
  if (cover.failed) return <p class="field__fault">{words.mapFailed}</p>
  if (cover.map === null) return <p class="quiet">{words.mapWorking}</p>
  const { bands, gap, greatest } = bandsOf(cover.map, topOf(cover.greatest))
  return (
    <section class="map-legend" aria-label={words.mapTitle}>
      <p class="map-legend__title">
        <b>{words.mapTitle}</b> <span class="quiet">{words.mapGreatest(greatest)}</span>
      </p>
      <ul class="map-legend__bands">
        {bands.map(({ from, to }, i) => (
          <li key={from}>
            <span class={`map-swatch map-swatch--${i + 1}`} aria-hidden="true" />
            {i === BANDS - 1 ? words.mapTop(from) : words.mapBand(from, to)}
          </li>
        ))}
      </ul>
      <p class="map-legend__gap">
        {gap.most > gap.least && <span class="map-swatch map-swatch--gap" aria-hidden="true" />}
        {gap.most > gap.least ? words.mapGap(words.small(gap.most, settings.length)) : words.mapNoGap}
      </p>
      {cover.map.bows.map(({ name, bow }) => (
        <p key={name} dir="auto">
          {words.mapBow(name, words.small(bow, settings.length))}
        </p>
      ))}
    </section>
  )
}

/** In mm of the face. */
function polygon(corners: readonly Point[]): string {
  return `M${corners.map(([x, y]) => `${x} ${y}`).join('L')}Z`
}
