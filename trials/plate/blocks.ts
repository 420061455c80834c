/** Four-sided blocks on a lattice whose corners may be moved: what a finite-element mesh and an outline are both made of. */
import type { Point } from '../../packages/engine/src/unit.ts'

export type Lattice = {
  columns: number[]
  rows: number[]
  /** Where corner (i, j) really lies, from where the straight lattice has it. */
  moved: (at: Point, i: number, j: number) => Point
  /** Thickness of the block whose lower left corner is (i, j), mm; 0 where there is none. */
  thickness: (i: number, j: number) => number
}

/** Eight nodes go round an element: corners first, then the middles of its sides. */
export type Mesh = {
  nodes: Point[]
  elements: { nodes: number[]; thickness: number }[]
  /** The node at lattice corner (i, j). */
  nodeAtCorner: (corner: Point) => number
}

export function cornerOf(lattice: Lattice, [i, j]: Point): Point {
  return lattice.moved([lattice.columns[i]!, lattice.rows[j]!], i, j)
}

/** Every block divided evenly into elements of about `size` mm; blocks of a column share their count, so the mesh has no hanging node. */
export function meshOf(lattice: Lattice, size: number): Mesh {
  const across = parts(lattice.columns, size)
  const up = parts(lattice.rows, size)
  const nodes: Point[] = []
  const nodeAt = new Map<string, number>()
  const keyOf = (a: number, b: number) => `${a} ${b}`
  const elements: Mesh['elements'] = []
  for (const { i, j, thickness } of blocksOf(lattice)) {
    const corners = roundBlock(i, j).map((at) => cornerOf(lattice, at))
    const [n, m] = [across.counts[i]!, up.counts[j]!]
    // in half elements: odd and even places together number corners and middles of sides alike
    const node = (a: number, b: number): number => {
      const key = keyOf(2 * across.before[i]! + a, 2 * up.before[j]! + b)
      const known = nodeAt.get(key)
      if (known !== undefined) return known
      nodes.push(bilinear(corners, a / (2 * n), b / (2 * m)))
      nodeAt.set(key, nodes.length - 1)
      return nodes.length - 1
    }
    for (let a = 0; a < 2 * n; a += 2)
      for (let b = 0; b < 2 * m; b += 2) {
        const round = [
          [0, 0],
          [2, 0],
          [2, 2],
          [0, 2],
          [1, 0],
          [2, 1],
          [1, 2],
          [0, 1],
        ] as const
        elements.push({ nodes: round.map(([da, db]) => node(a + da, b + db)), thickness })
      }
  }
  return { nodes, elements, nodeAtCorner: ([i, j]) => nodeAt.get(keyOf(2 * across.before[i]!, 2 * up.before[j]!))! }
}

/** The closed lines round the blocks that `wanted` picks: outer ones run anticlockwise, those of openings clockwise. */
export function outlinesOf(lattice: Lattice, wanted: (thickness: number) => boolean): Point[][] {
  const next = new Map<string, Point>()
  for (const { i, j, thickness } of blocksOf(lattice)) {
    if (!wanted(thickness)) continue
    const round = roundBlock(i, j)
    round.forEach((from, k) => {
      const to = round[(k + 1) % 4]!
      if (!next.delete(`${to} ${from}`)) next.set(`${from} ${to}`, to)
    })
  }
  const lines: Point[][] = []
  while (next.size > 0) {
    const [first] = next
    const line: Point[] = []
    let [key, to] = first!
    while (next.delete(key)) {
      line.push(cornerOf(lattice, to))
      const start = `${to} `
      const found = [...next].find(([candidate]) => candidate.startsWith(start))
      if (found === undefined) break
      ;[key, to] = found
    }
    lines.push(line)
  }
  return lines
}

/** Area within a line of corners; negative when it runs clockwise. */
export function turningArea(line: readonly Point[]): number {
  return line.reduce((sum, [x, y], k) => {
    const [nextX, nextY] = line[(k + 1) % line.length]!
    return sum + (x * nextY - nextX * y) / 2
  }, 0)
}

/** The lattice corners of a block, anticlockwise. */
function roundBlock(i: number, j: number): Point[] {
  return [
    [i, j],
    [i + 1, j],
    [i + 1, j + 1],
    [i, j + 1],
  ]
}

function blocksOf(lattice: Lattice): { i: number; j: number; thickness: number }[] {
  const blocks = []
  for (let i = 0; i + 1 < lattice.columns.length; i++)
    for (let j = 0; j + 1 < lattice.rows.length; j++) {
      const thickness = lattice.thickness(i, j)
      if (thickness > 0) blocks.push({ i, j, thickness })
    }
  return blocks
}

/** How many elements each strip of the lattice gets, and how many stand before it. */
function parts(lines: readonly number[], size: number): { counts: number[]; before: number[] } {
  const counts = lines.slice(1).map((to, k) => Math.max(1, Math.round((to - lines[k]!) / size)))
  const before = [0]
  for (const count of counts) before.push(before.at(-1)! + count)
  return { counts, before }
}

function bilinear(corners: readonly Point[], s: number, t: number): Point {
  const weights = [(1 - s) * (1 - t), s * (1 - t), s * t, (1 - s) * t]
  const along = (axis: 0 | 1) => weights.reduce((sum, weight, k) => sum + weight * corners[k]![axis], 0)
  return [along(0), along(1)]
}
