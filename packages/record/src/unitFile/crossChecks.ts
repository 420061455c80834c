/**
 * Checks between the parts of a unit: names that stand once, names that lead somewhere. They run on whatever of the file could be read, so
 * that a slip in one place does not hide the slips in another; where a name itself could not be read, nothing is said of what points to it.
 */
import type { FaultPath } from '@gripbook/engine'
import type { FileFault, Named } from './fault.ts'
import { nearestName } from './nearest.ts'

/** What is left of a value after everything that the schema refused was taken out of it. */
type Left<T> = T extends (infer E)[] ? (Left<E> | undefined)[] : T extends object ? { [K in keyof T]?: Left<T[K]> } : T

type Names = { first: Map<string, FaultPath>; whole: boolean }

type Item = { id?: string }
type LeftFace = Left<{
  id: string
  holes: { id: string; asFound: string; unitsBefore: Record<string, number> }[]
  kinds: { id: string }[]
  ranks: { quantity: string; less: string; more: string }[]
  trials: { hole: string; kind: string }[]
  cover: { lines: { name: string }[] }
  order: { sequence: string[] }[]
  inside: string
}>
type LeftThing = { id?: string; face?: string; hole?: string }
type LeftUnit = {
  faces?: (LeftFace | undefined)[]
  kinds?: (Item | undefined)[]
  tools?: (Item | undefined)[]
  parts?: (LeftThing | undefined)[]
  jobs?: (LeftThing | undefined)[]
}

/** Names with which the answer would mix up something of its own. "none" is no kind: it stands for an empty hole. */
const RESERVED: Record<Exclude<Named, 'line'>, readonly string[]> = {
  face: ['__proto__'],
  hole: ['__proto__'],
  kind: ['__proto__', 'none'],
  tool: ['__proto__'],
  part: ['__proto__'],
  job: ['__proto__'],
}

/** Faults between the parts of what could be read of a unit file. */
export function crossFaults(unit: LeftUnit): FileFault[] {
  const faults: FileFault[] = []
  const none: Names = { first: new Map(), whole: true }
  const faces = namesOf(unit.faces, 'face', ['faces'], none, faults)
  const tray = namesOf(unit.kinds, 'kind', ['kinds'], none, faults)
  unit.faces?.forEach((face, i) => {
    if (face) faceFaults(face, ['faces', i], tray, faults)
    if (face?.inside === undefined) return
    const path = ['faces', i, 'inside']
    if (face.inside === face.id) faults.push({ code: 'face-inside-itself', path, name: face.inside })
    else refer('face', face.inside, faces, path, faults)
  })
  namesOf(unit.tools, 'tool', ['tools'], none, faults)
  for (const what of ['part', 'job'] as const) {
    const list = unit[`${what}s`]
    namesOf(list, what, [`${what}s`], none, faults)
    list?.forEach((thing, i) => {
      refer('face', thing?.face, faces, [`${what}s`, i, 'face'], faults)
      const face = thing?.face === undefined ? undefined : unit.faces?.find((one) => one?.id === thing.face)
      if (face) refer('hole', thing?.hole, namesOf(face.holes, 'hole', [], none, []), [`${what}s`, i, 'hole'], faults)
    })
  }
  return faults
}

/** A fault when a name leads nowhere. Where a name of the list could not be read, nothing is said. */
function refer(what: Named, name: string | undefined, names: Names, path: FaultPath, faults: FileFault[]): void {
  if (name === undefined || names.first.has(name) || !names.whole) return
  const near = nearestName(name, names.first.keys())
  faults.push({ code: 'no-such-name', path, what, name, ...(near === undefined ? {} : { near }) })
}

function faceFaults(face: LeftFace, path: FaultPath, tray: Names, faults: FileFault[]): void {
  const holes = namesOf(face.holes, 'hole', [...path, 'holes'], { first: new Map(), whole: true }, faults)
  const kinds = namesOf(face.kinds, 'kind', [...path, 'kinds'], tray, faults)
  const referTo = (what: 'hole' | 'kind', name: string | undefined, ...steps: FaultPath) =>
    refer(what, name, what === 'hole' ? holes : kinds, [...path, ...steps], faults)
  face.holes?.forEach((hole, i) => {
    if (hole?.asFound !== 'none') referTo('kind', hole?.asFound, 'holes', i, 'asFound')
    for (const name of Object.keys(hole?.unitsBefore ?? {})) {
      if (name !== 'none') referTo('kind', name, 'holes', i, 'unitsBefore', name)
    }
  })
  face.ranks?.forEach((rank, i) => {
    if (rank?.quantity === undefined) return
    const what = rank.quantity === 'length' ? 'kind' : 'hole'
    referTo(what, rank.less, 'ranks', i, 'less')
    referTo(what, rank.more, 'ranks', i, 'more')
    if (rank.less !== undefined && rank.less === rank.more) {
      faults.push({ code: 'rank-of-itself', path: [...path, 'ranks', i], name: rank.less })
    }
  })
  face.trials?.forEach((trial, i) => {
    referTo('hole', trial?.hole, 'trials', i, 'hole')
    referTo('kind', trial?.kind, 'trials', i, 'kind')
  })
  face.order?.forEach((pass, i) => {
    pass?.sequence?.forEach((name, j) => {
      referTo('hole', name, 'order', i, 'sequence', j)
    })
  })
  lineFaults(face.cover?.lines, [...path, 'cover', 'lines'], faults)
}

/** The answer tells the lines of a cover apart by their names. */
function lineFaults(lines: ({ name?: string } | undefined)[] | undefined, path: FaultPath, faults: FileFault[]): void {
  const first = new Map<string, FaultPath>()
  lines?.forEach((line, i) => {
    if (line?.name === undefined) return
    const here = [...path, i, 'name']
    const earlier = first.get(line.name)
    if (earlier) faults.push({ code: 'repeated-name', path: here, what: 'line', name: line.name, first: earlier })
    else first.set(line.name, here)
  })
}

/** The ids of a list and of what is known `before` it; an id that stands twice is a fault at its second place. */
function namesOf(
  list: (Item | undefined)[] | undefined,
  what: Exclude<Named, 'line'>,
  path: FaultPath,
  before: Names,
  faults: FileFault[],
): Names {
  const first = new Map(before.first)
  let whole = before.whole
  list?.forEach((item, i) => {
    if (item?.id === undefined) {
      whole = false
      return
    }
    const here = [...path, i, 'id']
    const earlier = first.get(item.id)
    if (RESERVED[what].includes(item.id)) faults.push({ code: 'reserved-name', path: here, name: item.id })
    if (earlier) faults.push({ code: 'repeated-name', path: here, what, name: item.id, first: earlier })
    else first.set(item.id, here)
  })
  return { first, whole }
}
