/** The map of what lies under the cover as a few bands of pressure and the places where it gapes: paths in mm, drawn over the photograph. */
import type { CoverMap } from '@gripbook/engine'

export type Bands = {
  /** Lightest first: what lies from one figure to the next, MPa, as a path in mm of the face. */
  bands: { from: number; to: number; path: string }[]
  /** Where the cover stands off by more than `least` mm, and the widest gap. */
  gap: { path: string; least: number; most: number }
  greatest: number
}

export const BANDS = 5
/** mm: a gap that no feeler gauge finds is none. */
const LEAST_GAP = 0.001
/** Rows reach a little into the next one: no seam shows between them. */
const OVERLAP = 1.15
/** About so many cells along the longer side: bands have smooth edges, and a phone still draws them at once. */
const CELLS = 360

/** `top`: pressure at the end of the last band, MPa; the same for every step of an order, so that a colour keeps its meaning. */
export function bandsOf(map: CoverMap, top: number): Bands {
  const finer = finerMap(map, Math.max(1, Math.min(8, Math.round(CELLS / Math.max(map.columns, map.rows)))))
  const width = top / BANDS
  const bandAt = (pressure: number | null) =>
    pressure === null || pressure <= 0 ? null : Math.min(BANDS - 1, Math.floor(pressure / width))
  return {
    bands: Array.from({ length: BANDS }, (_, i) => ({
      from: i * width,
      to: (i + 1) * width,
      path: cellsWhere(finer, (at) => bandAt(finer.pressure[at] ?? null) === i),
    })),
    gap: {
      path: cellsWhere(finer, (at) => (finer.gap[at] ?? 0) > LEAST_GAP),
      least: LEAST_GAP,
      most: Math.max(0, ...known(map.gap)),
    },
    greatest: Math.max(0, ...known(map.pressure)),
  }
}

/** A round figure (1, 2 or 5 with noughts) times BANDS that is not below `greatest`. */
export function topOf(greatest: number): number {
  if (!(greatest > 0)) return BANDS
  const each = greatest / BANDS
  const decade = 10 ** Math.floor(Math.log10(each))
  const step = [1, 2, 5, 10].find((times) => times * decade >= each * (1 - 1e-9))!
  return step * decade * BANDS
}

/** Rows of cells as rectangles, each row's neighbours in one. */
function cellsWhere({ from, step, columns, rows }: CoverMap, where: (at: number) => boolean): string {
  let path = ''
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      if (!where(row * columns + column)) continue
      const start = column
      while (column + 1 < columns && where(row * columns + column + 1)) column++
      const x = from[0] + (start - 0.5) * step
      const y = from[1] + (row - 0.5) * step
      const wide = short((column - start + 1) * step)
      path += `M${short(x)} ${short(y)}h${wide}v${short(step * OVERLAP)}h-${wide}z`
    }
  }
  return path
}

/**
 * Values between the points, linear; where a neighbour lies off the cover the nearest point on it counts. What reaches over the edge is cut off by
 * whoever draws it.
 */
function finerMap(map: CoverMap, times: number): CoverMap {
  const columns = (map.columns - 1) * times + 1
  const rows = (map.rows - 1) * times + 1
  const at = (values: CoverMap['gap'], column: number, row: number) => values[row * map.columns + column] ?? null
  const between = (values: CoverMap['gap']) => {
    const finer: (number | null)[] = new Array(columns * rows)
    for (let i = 0; i < finer.length; i++) {
      const [x, y] = [(i % columns) / times, Math.floor(i / columns) / times]
      const [left, low] = [Math.floor(x), Math.floor(y)]
      const [right, high] = [Math.min(left + 1, map.columns - 1), Math.min(low + 1, map.rows - 1)]
      const [along, up] = [x - left, y - low]
      const a = at(values, left, low)
      const b = at(values, right, low)
      const c = at(values, left, high)
      const d = at(values, right, high)
      if (a !== null && b !== null && c !== null && d !== null)
        finer[i] = (a * (1 - along) + b * along) * (1 - up) + (c * (1 - along) + d * along) * up
      else finer[i] = nearestOf(along < 0.5 ? [a, b] : [b, a], along < 0.5 ? [c, d] : [d, c], up < 0.5)
    }
    return finer
  }
  return { ...map, step: map.step / times, columns, rows, pressure: between(map.pressure), gap: between(map.gap) }
}

type Side = [near: number | null, far: number | null]

/** The first of four corners that lies on the cover, the nearest row and column leading. */
function nearestOf(lower: Side, upper: Side, lowerFirst: boolean): number | null {
  const [first, second] = lowerFirst ? [lower, upper] : [upper, lower]
  return first[0] ?? first[1] ?? second[0] ?? second[1]
}

const known = (values: readonly (number | null)[]) => values.filter((value) => value !== null)
const short = (value: number) => String(Math.round(value * 1000) / 1000)
