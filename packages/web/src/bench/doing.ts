/** From what the hand did to the entries: one tap may be several, and each stop that is passed has its reason before it. */
import type { Kind, Quantity } from '@gripbook/engine'
import {
  boltPlaced,
  type Facts,
  type FoldedUnit,
  faceClosed,
  gateOverridden,
  type Happening,
  handStarted,
  partWentIn,
  passTorqued,
  runDown,
  type Stop,
  snugged,
  stopsFor,
  turnsCounted,
  witnessMarked,
} from '@gripbook/record'
import type { Bracket } from './bracket.ts'
import type { BenchStep } from './round.ts'
import type { toolOf } from './torque.ts'

/** What the hand reports of a step. */
export type Report = {
  /** The kind in the hand, at a start. */
  kind?: Kind['id']
  brackets?: readonly Bracket[]
  /** Turns until the head sat, where they were counted. */
  turns?: number
  /** Without a torque: by feel. */
  torque?: Quantity
  /** Degrees by which it was turned further after the torque. */
  angle?: number
  tool?: ReturnType<typeof toolOf>
}

/** The entries of one step that is done. A count of turns with the head seated says that the bolt is down. */
export function happeningsOf(face: string, step: BenchStep, report: Report = {}): Happening[] {
  const { hole } = step
  if (hole === null) return [faceClosed({ face })]
  const at = { face, hole }
  switch (step.round.what) {
    case 'start':
      return [
        ...(report.kind === undefined ? [] : [placing(at, report.kind, report.brackets)]),
        ...(report.brackets ?? []).map((bracket) =>
          partWentIn({ part: bracket.part, ...(bracket.wayRound === null ? {} : { wayRound: bracket.wayRound }) }),
        ),
        ...(step.started ? [] : [handStarted(at)]),
      ]
    case 'run down':
      return report.turns === undefined ? [runDown(at)] : [turnsCounted({ ...at, turns: report.turns, seated: true })]
    case 'snug':
      return [snugged(at)]
    case 'pass':
      return [
        passTorqued({
          ...at,
          pass: step.pass,
          final: step.final,
          ...(report.torque === undefined ? {} : { torque: report.torque }),
          ...(report.angle === undefined ? {} : { angle: report.angle }),
          ...(step.wanted === undefined ? {} : { wanted: step.wanted }),
          ...(report.tool === undefined ? {} : { tool: report.tool }),
        }),
      ]
    case 'mark':
      return [witnessMarked(at)]
    case 'close':
      return [faceClosed({ face })]
  }
}

function placing(at: { face: string; hole: string }, kind: string, brackets: readonly Bracket[] = []): Happening {
  const wayRound = brackets.find((bracket) => bracket.wayRound !== null)?.wayRound
  return boltPlaced({ ...at, kind, ...(wayRound == null ? {} : { wayRound }) })
}

/** The stops that these entries would pass, each once. */
export function stopsAt(folded: FoldedUnit, happenings: readonly Happening[], facts: Facts): Stop[] {
  const seen = new Set<string>()
  return happenings
    .flatMap((happening) => stopsFor(folded, happening, facts))
    .filter((stop) => {
      const text = JSON.stringify([stop.gate, stop.why])
      const fresh = !seen.has(text)
      seen.add(text)
      return fresh
    })
}

/** The same entries, each with the reason before it for every gate that it passes. */
export function withReason(
  folded: FoldedUnit,
  happenings: readonly Happening[],
  facts: Facts,
  reason: string,
): Happening[] {
  return happenings.flatMap((happening) => {
    const gates = new Map(stopsFor(folded, happening, facts).map((stop) => [stop.gate, stop]))
    return [
      ...[...gates.values()].map(({ gate, face, hole }) =>
        gateOverridden({
          gate,
          ...(face === undefined ? {} : { face }),
          ...(hole === undefined ? {} : { hole }),
          reason,
        }),
      ),
      happening,
    ]
  })
}
