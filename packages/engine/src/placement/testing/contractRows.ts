import { must } from '../../must.ts'
import type { Face, Hole, Kind, Trial } from '../../unit.ts'
import type { Bounds, Row } from './exactLinear.ts'
import { lengthBounds, nanometres } from './wholeNanometres.ts'

/**
 * The contract of a fit written down as rows, one for one and with nothing clever: every quantity of every hole and kind is a variable in
 * nanometres with one value for the whole face.
 */
export type ContractRows = {
  variables: Bounds[]
  holes: readonly Hole[]
  kinds: readonly Kind[]
  /** D ≥ c + T of a blind hole. */
  holeFacts: Row[][]
  /** b ≤ L, and how far an unstated thread length may stand off L. */
  kindFacts: Row[][]
  rankFacts: Row[]
  /** Rank lines of one quantity that lead back to where they began. */
  ring: boolean
  trialFacts: { hole: number; kind: number; rows: Row[] }[]
  /** Line 1. */
  compatible(hole: number, kind: number): boolean
  /** Lines 2 to 5. `highest` asks for the highest end of the minimum engagement; null when that has no end. */
  fitRows(hole: number, kind: number, engagement: 'lowest' | 'highest'): Row[] | null
}

const UNKNOWN: Bounds = { lo: 0, hi: Number.POSITIVE_INFINITY }
const ZERO: Bounds = { lo: 0, hi: 0 }

/** Pitches of the coarse series in mm, ISO 261. */
const COARSE: Record<string, number> = { M5: 0.8, M6: 1, M8: 1.25, M10: 1.5, M12: 1.75 }

const listed = (thread: string | readonly string[]) => (typeof thread === 'string' ? [thread] : thread)

const pitchesOf = (thread: string | readonly string[]) =>
  listed(thread).map((name) => {
    const pitch = COARSE[name]
    must(pitch !== undefined, 'generated faces use the coarse series only', name)
    return nanometres(pitch)
  })

type Terms = [variable: number, coefficient: number][]
const minus = (terms: Terms): Terms => terms.map(([variable, coefficient]) => [variable, -coefficient])

export function contractRows(face: Face, tray: readonly Kind[] = face.kinds ?? []): ContractRows {
  const variables: Bounds[] = []
  const variable = (bounds: Bounds) => variables.push(bounds) - 1
  const faceGasket = face.gasket === undefined ? undefined : variable(lengthBounds(face.gasket, ZERO))

  const holes = face.holes.map((hole) => {
    const least = lengthBounds(hole.minimumEngagement ?? face.minimumEngagement, { lo: -1, hi: -1 })
    must(least.lo >= 0, 'generated faces state the least engagement', hole.id)
    return {
      grip: variable(lengthBounds(hole.grip, UNKNOWN)),
      bracket: variable(lengthBounds(hole.bracket, ZERO)),
      gasket:
        hole.gasket === undefined && faceGasket !== undefined ? faceGasket : variable(lengthBounds(hole.gasket, ZERO)),
      mouth: variable(lengthBounds(hole.mouth, ZERO)),
      threadDepth: variable(lengthBounds(hole.threadDepth, UNKNOWN)),
      bottomDepth: variable(lengthBounds(hole.bottomDepth, UNKNOWN)),
      behind: hole.behind === undefined ? undefined : variable(lengthBounds(hole.behind, UNKNOWN)),
      blind: hole.ending !== 'through',
      least,
    }
  })

  const kinds = tray.map((kind) => {
    const pitches = pitchesOf(kind.thread)
    const washer =
      kind.washer === undefined
        ? undefined
        : typeof kind.washer === 'object' && 'thickness' in kind.washer
          ? kind.washer.thickness
          : kind.washer
    return {
      length: variable(lengthBounds(kind.length, UNKNOWN)),
      threadLength: variable(lengthBounds(kind.threadLength, UNKNOWN)),
      tip: variable(lengthBounds(kind.tip, { lo: Math.min(...pitches), hi: 2 * Math.max(...pitches) })),
      washer: variable(lengthBounds(washer, ZERO)),
      runOut: kind.threadLength === undefined ? 2.5 * Math.max(...pitches) : undefined,
    }
  })

  /** s = L − G − W − gasket − washer */
  const stickOut = (hole: (typeof holes)[number], kind: (typeof kinds)[number]): Terms => [
    [kind.length, 1],
    [hole.grip, -1],
    [hole.bracket, -1],
    [hole.gasket, -1],
    [kind.washer, -1],
  ]

  const holeIndex = new Map(face.holes.map(({ id }, index) => [id, index]))
  const kindIndex = new Map(tray.map(({ id }, index) => [id, index]))

  const trialRows = (trial: Trial): Row[] => {
    const hole = holes[holeIndex.get(trial.hole)!]!
    const kind = kinds[kindIndex.get(trial.kind)!]!
    const s = stickOut(hole, kind)
    if ('stickOut' in trial) {
      const { lo, hi } = lengthBounds(trial.stickOut, UNKNOWN)
      const rows: Row[] = [{ terms: minus(s), atMost: -lo }]
      if (hi !== Number.POSITIVE_INFINITY) rows.push({ terms: s, atMost: hi })
      return rows
    }
    if ('proud' in trial) {
      const proud = variable(lengthBounds(trial.proud, UNKNOWN))
      return [
        { terms: [[proud, 1], [hole.mouth, 1], ...minus(s)], atMost: 0 },
        { terms: [...s, [hole.mouth, -1], [proud, -1], [kind.tip, -1]], atMost: 0 },
      ]
    }
    const pitches = pitchesOf(tray[kindIndex.get(trial.kind)!]!.thread)
    must(pitches.length === 1, 'turns are counted only where the pitch is known', trial)
    // A count of turns is right to half a turn either way.
    const least = nanometres((Math.max(0, trial.turns - 0.5) * pitches[0]!) / 1e6)
    const most = nanometres(((trial.turns + 0.5) * pitches[0]!) / 1e6)
    return [
      { terms: [[hole.mouth, 1], ...minus(s)], atMost: -least },
      { terms: [...s, [hole.mouth, -1], [kind.tip, -1]], atMost: most },
    ]
  }

  const rankVariable = (quantity: string, id: string) => {
    if (quantity === 'length') return kinds[kindIndex.get(id)!]!.length
    return holes[holeIndex.get(id)!]![quantity as 'grip' | 'threadDepth' | 'bottomDepth']
  }
  const ranks = (face.ranks ?? []).map(
    ({ quantity, less, more }) => [rankVariable(quantity, less), rankVariable(quantity, more)] as const,
  )

  return {
    variables,
    holes: face.holes,
    kinds: tray,
    holeFacts: holes.map(({ blind, mouth, threadDepth, bottomDepth }) =>
      blind
        ? [
            {
              terms: [
                [mouth, 1],
                [threadDepth, 1],
                [bottomDepth, -1],
              ],
              atMost: 0,
            },
          ]
        : [],
    ),
    kindFacts: kinds.map(({ length, threadLength, runOut }) => {
      const rows: Row[] = [
        {
          terms: [
            [threadLength, 1],
            [length, -1],
          ],
          atMost: 0,
        },
      ]
      if (runOut !== undefined)
        rows.push({
          terms: [
            [length, 1],
            [threadLength, -1],
          ],
          atMost: runOut,
        })
      return rows
    }),
    rankFacts: ranks.map(([less, more]) => ({
      terms: [
        [less, 1],
        [more, -1],
      ],
      atMost: 0,
    })),
    ring: hasRing(ranks),
    trialFacts: (face.trials ?? []).map((trial) => ({
      hole: holeIndex.get(trial.hole)!,
      kind: kindIndex.get(trial.kind)!,
      rows: trialRows(trial),
    })),
    compatible: (hole, kind) => {
      const there = face.holes[hole]!
      const bolt = tray[kind]!
      const common = listed(bolt.thread).some((thread) => listed(there.thread).includes(thread))
      return common && (there.needs ?? []).every((need) => (bolt.features ?? []).includes(need))
    },
    fitRows: (holeAt, kindAt, engagement) => {
      const hole = holes[holeAt]!
      const kind = kinds[kindAt]!
      const e = engagement === 'lowest' ? hole.least.lo : hole.least.hi
      if (e === Number.POSITIVE_INFINITY) return null
      const s = stickOut(hole, kind)
      const rows: Row[] = [
        { terms: [...minus(s), [kind.tip, 1], [hole.mouth, 1]], atMost: -e },
        {
          terms: [
            [kind.threadLength, -1],
            [kind.tip, 1],
          ],
          atMost: -e,
        },
        { terms: [[hole.threadDepth, -1]], atMost: -e },
        { terms: [[hole.mouth, -1], [hole.threadDepth, -1], ...s, [kind.threadLength, -1]], atMost: -e },
        { terms: [...s, [kind.threadLength, -1], [hole.mouth, -1]], atMost: 0 },
      ]
      if (hole.blind) {
        rows.push({ terms: [...s, [hole.bottomDepth, -1]], atMost: 0 })
        rows.push({ terms: [...s, [kind.tip, -1], [hole.mouth, -1], [hole.threadDepth, -1]], atMost: 0 })
      } else if (hole.behind !== undefined) {
        rows.push({ terms: [...s, [hole.mouth, -1], [hole.threadDepth, -1], [hole.behind, -1]], atMost: 0 })
      }
      return rows
    },
  }
}

function hasRing(edges: readonly (readonly [number, number])[]): boolean {
  let left = edges
  for (;;) {
    const lower = new Set(left.map(([less]) => less))
    const kept = left.filter(([, more]) => lower.has(more))
    if (kept.length === left.length) return left.length > 0
    left = kept
  }
}
