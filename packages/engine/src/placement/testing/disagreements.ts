import type { Kind, Unit } from '../../unit.ts'
import type { FaceAnswer } from '../answer.ts'
import { type BruteAnswer, bruteForce, pairAlone } from './bruteForce.ts'
import { contractRows } from './contractRows.ts'

export const trayOf = (unit: Unit): Kind[] => [...(unit.faces[0]!.kinds ?? []), ...(unit.kinds ?? [])]

const same = (one: readonly string[], other: readonly string[]) => [...one].sort().join() === [...other].sort().join()

/** Everything in which the answer for the first face of a small unit differs from the enumeration, one sentence each. */
export function disagreements(unit: Unit, answer: FaceAnswer): string[] {
  const face = unit.faces[0]!
  const tray = trayOf(unit)
  const slow = bruteForce(face, tray)
  const found: string[] = []
  const check = (holds: boolean, sentence: () => string) => {
    if (!holds) found.push(sentence())
  }

  const rows = contractRows(face, tray)
  for (const [hole, { id }] of face.holes.entries()) {
    for (const [kind, { id: kindId }] of tray.entries()) {
      const verdict = pairAlone(rows, hole, kind)
      const said = answer.pairs.find((pair) => pair.hole === id && pair.kind === kindId)
      check(
        said?.verdict === verdict,
        () => `pair ${id} ${kindId}: ${said?.verdict} (${said?.line}, ${said?.why}), enumeration ${verdict}`,
      )
    }
  }

  check(answer.feasible === slow.feasible, () => `feasible: ${answer.feasible}, enumeration ${slow.feasible}`)
  if (answer.feasible !== slow.feasible) return found
  if (!slow.feasible && slow.missing === null) {
    check(answer.conflict !== null, () => 'no conflict named although the figures contradict each other')
    return found
  }
  check(answer.missing === slow.missing, () => `missing: ${answer.missing}, enumeration ${slow.missing}`)
  const inConflict = new Set(answer.conflict?.holes ?? [])
  for (const { id } of face.holes) {
    if (inConflict.has(id)) {
      check(
        answer.holes[id]?.verdict === 'contradicted',
        () => `hole ${id} is in the conflict but ${answer.holes[id]?.verdict}`,
      )
      continue
    }
    const may = answer.holes[id]?.may ?? []
    check(same(may, slow.may[id]!), () => `may of ${id}: ${may}, enumeration ${slow.may[id]}`)
    if (slow.canBeEmpty[id]) continue
    const verdict = slow.may[id]!.length === 1 ? 'settled' : 'open'
    check(
      answer.holes[id]?.verdict === verdict,
      () => `hole ${id}: ${answer.holes[id]?.verdict}, enumeration ${verdict}`,
    )
  }
  const best = face.holes.map(({ id }) => tray.findIndex((kind) => kind.id === answer.holes[id]?.best))
  check(
    slow.placements.some((placed) => placed.join() === best.join()),
    () => `best is no placement: ${best}`,
  )

  if (slow.feasible) found.push(...onlyWhenFeasible(unit, answer, slow))
  else found.push(...onConflict(answer, slow))
  return found
}

function onlyWhenFeasible(unit: Unit, answer: FaceAnswer, slow: BruteAnswer): string[] {
  const face = unit.faces[0]!
  const tray = trayOf(unit)
  const found: string[] = []
  if (answer.conflict !== null) found.push('a conflict is named although a complete placement exists')
  const near = answer.likelihood.method === 'exact' ? 1e-9 : 5 * (answer.likelihood.standardError ?? 0) + 0.01
  for (const { id, asFound } of face.holes) {
    const said = answer.holes[id]!
    for (const kind of tray) {
      const likely = said.likely[kind.id] ?? 0
      const counted = slow.likely[id]![kind.id] ?? 0
      if (Math.abs(likely - counted) > near) found.push(`likely ${id} ${kind.id}: ${likely}, enumeration ${counted}`)
    }
    if (asFound === undefined || asFound === 'none') continue
    const may = slow.may[id]!
    const verdict = !may.includes(asFound) ? 'must change' : may.length === 1 ? 'right' : 'may stay'
    if (said.asFound?.verdict !== verdict)
      found.push(`as found ${id}: ${said.asFound?.verdict}, enumeration ${verdict}`)
  }
  for (const { id, count } of tray) {
    if (count === undefined) continue
    const left = count - face.holes.filter((hole) => answer.holes[hole.id]!.best === id).length
    if ((answer.leftOver[id] ?? 0) !== left) found.push(`left over ${id}: ${answer.leftOver[id]}, best leaves ${left}`)
  }

  if (answer.changes.count !== slow.changes) found.push(`changes: ${answer.changes.count}, enumeration ${slow.changes}`)
  const moves = answer.changes.cycles.flat()
  if (moves.length !== answer.changes.count) found.push(`${moves.length} moves for ${answer.changes.count} changes`)
  const after = new Map(
    face.holes.flatMap(({ id, asFound }) => (asFound === undefined ? [] : [[id, asFound] as const])),
  )
  for (const { hole, from, to } of moves) {
    if (after.get(hole) !== from) found.push(`move from ${from} out of ${hole}, where ${after.get(hole)} was found`)
    after.set(hole, to)
  }
  const reached = slow.placements.some((placed) =>
    face.holes.every(({ id }, hole) => !after.has(id) || after.get(id) === tray[placed[hole]!]?.id),
  )
  if (!reached) found.push('the moves lead to no complete placement')
  return found
}

function onConflict({ conflict }: FaceAnswer, slow: BruteAnswer): string[] {
  if (conflict === null) return ['not feasible, and no conflict is named']
  const { holes } = conflict
  const found: string[] = []
  if (slow.canFill(holes)) found.push(`the holes of the conflict can all be filled: ${holes}`)
  for (const spared of holes)
    if (!slow.canFill(holes.filter((id) => id !== spared))) found.push(`the conflict ${holes} does not need ${spared}`)
  return found
}
