/** Writes what CalculiX reads: shells of eight nodes, the bed as springs between their nodes, one step for each bolt with 1 N on it. */
import type { Point } from '../../packages/engine/src/unit.ts'
import type { Mesh } from './blocks.ts'

export type Plate = { mesh: Mesh; young: number; poisson: number; bed: number; bolts: number[] }

/**
 * The deck. With `thinness` above 1 each thickness is divided by it and the modulus multiplied by its cube: the bending stiffness stays, shear no longer counts.
 * The bed's matrix is k∫N Nᵀ dA, so that elements and bed speak of the same deflection.
 */
export function deckOf({ mesh, young, poisson, bed, bolts }: Plate, thinness: number): string {
  const thicknesses = [...new Set(mesh.elements.map(({ thickness }) => thickness))]
  const lines = ['*NODE', ...mesh.nodes.map(([x, y], k) => `${k + 1}, ${figure(x)}, ${figure(y)}, 0.`)]
  for (const [k, thickness] of thicknesses.entries()) {
    lines.push(`*ELEMENT, TYPE=S8R, ELSET=T${k}`)
    mesh.elements.forEach((element, n) => {
      if (element.thickness === thickness) lines.push([n + 1, ...element.nodes.map((node) => node + 1)].join(', '))
    })
  }
  lines.push('*MATERIAL, NAME=COVER', '*ELASTIC', `${figure(young * thinness ** 3)}, ${figure(poisson)}`)
  for (const [k, thickness] of thicknesses.entries())
    lines.push(`*SHELL SECTION, ELSET=T${k}, MATERIAL=COVER`, figure(thickness / thinness))
  lines.push(...springsOf(mesh, bed))
  // the cover cannot slide or turn in its own plane
  lines.push('*BOUNDARY', '1, 1, 2', `${farFrom(mesh.nodes)}, 2, 2`)
  lines.push('*NSET, NSET=BOLTS', ...bolts.map((node) => `${node + 1},`))
  for (const node of bolts)
    lines.push('*STEP', '*STATIC', '*CLOAD, OP=NEW', `${node + 1}, 3, 1.`, '*NODE PRINT, NSET=BOLTS', 'U', '*END STEP')
  return `${lines.join('\n')}\n`
}

/** A matrix of springs: its rows' sums to the ground, what stands beside the diagonal between two nodes. Equal springs share a card. */
function springsOf(mesh: Mesh, bed: number): string[] {
  const between = new Map<string, number>()
  const toGround = new Array<number>(mesh.nodes.length).fill(0)
  for (const { nodes } of mesh.elements) {
    const matrix = bedMatrix(nodes.map((node) => mesh.nodes[node]!))
    nodes.forEach((from, a) => {
      nodes.forEach((to, b) => {
        const stiffness = bed * matrix[a]![b]!
        toGround[from]! += stiffness
        if (from < to) between.set(`${from + 1}, ${to + 1}`, (between.get(`${from + 1}, ${to + 1}`) ?? 0) - stiffness)
      })
    })
  }
  let element = mesh.elements.length
  let cards = 0
  const cardsOf = (type: string, freedoms: string, springs: (readonly [string, number])[]): string[] => {
    const equal = new Map<string, string[]>()
    for (const [nodes, stiffness] of springs) {
      const key = figure(stiffness)
      equal.set(key, [...(equal.get(key) ?? []), `${++element}, ${nodes}`])
    }
    return [...equal].flatMap(([stiffness, rows]) => {
      const set = `B${cards++}`
      return [`*ELEMENT, TYPE=${type}, ELSET=${set}`, ...rows, `*SPRING, ELSET=${set}`, freedoms, stiffness]
    })
  }
  return [
    ...cardsOf(
      'SPRING1',
      '3',
      toGround.map((stiffness, node) => [`${node + 1}`, stiffness] as const),
    ),
    ...cardsOf('SPRING2', '3, 3', [...between]),
  ]
}

/** ∫N Nᵀ dA of an element of eight nodes with straight sides, mm²; three points each way are exact. */
function bedMatrix(at: readonly Point[]): number[][] {
  const matrix = at.map(() => at.map(() => 0))
  const far = Math.sqrt(0.6)
  const points = [
    [-far, 5 / 9],
    [0, 8 / 9],
    [far, 5 / 9],
  ] as const
  for (const [s, ws] of points)
    for (const [t, wt] of points) {
      const shape = shapesAt(s, t)
      const area = ws * wt * jacobian(at, s, t)
      shape.forEach((one, a) => {
        shape.forEach((other, b) => {
          matrix[a]![b]! += one * other * area
        })
      })
    }
  return matrix
}

const CORNERS = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
] as const
const MIDDLES = [
  [0, -1],
  [1, 0],
  [0, 1],
  [-1, 0],
] as const

function shapesAt(s: number, t: number): number[] {
  const corners = CORNERS.map(([a, b]) => ((1 + a * s) * (1 + b * t) * (a * s + b * t - 1)) / 4)
  const middles = MIDDLES.map(([a, b]) => (a === 0 ? ((1 - s * s) * (1 + b * t)) / 2 : ((1 + a * s) * (1 - t * t)) / 2))
  return [...corners, ...middles]
}

function jacobian(at: readonly Point[], s: number, t: number): number {
  const along = (axis: 0 | 1) => CORNERS.reduce((sum, [a, b], k) => sum + (a * (1 + b * t) * at[k]![axis]) / 4, 0)
  const up = (axis: 0 | 1) => CORNERS.reduce((sum, [a, b], k) => sum + (b * (1 + a * s) * at[k]![axis]) / 4, 0)
  return along(0) * up(1) - along(1) * up(0)
}

/** Number in the deck of a node far from the first one along x: it holds the cover from turning. */
function farFrom(nodes: readonly Point[]): number {
  const [start] = nodes[0]!
  const far = (k: number) => Math.abs(nodes[k]![0] - start)
  return nodes.reduce((best, _, k) => (far(k) > far(best) ? k : best), 0) + 1
}

/** Twenty characters at most: the deck's fields hold no more. */
function figure(value: number): string {
  return value.toExponential(11)
}
