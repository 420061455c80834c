import type { Conflict, Face, FaceAnswer, Kind, PlacementAnswer, Unit } from '@gripbook/engine'
import { boltName, roundsToDo, trayOf } from '@gripbook/print'
import { atAGlance } from './glance.ts'
import { holeLines, percent } from './holeLines.ts'
import { listed, stopped } from './list.ts'
import { painter } from './paint.ts'
import { roundByHand } from './rounds.ts'
import { width } from './width.ts'
import { wrap } from './wrap.ts'

export type Screen = { columns: number; colour: boolean }

/** The narrowest and the widest that the text is set; wider lines are hard to read. */
const COLUMNS = { least: 30, most: 100 }

const CAUTION =
  'A check, not a permission: torques, limits and orders of the service manual rule, and local rules and a licensed professional’s judgement come first.'

/**
 * The answer of `gripbook place` for a person at the bench. For each face first what to do, then its holes in order, then what contradicts
 * itself, the moves by hand, what is left over. What is empty is not printed. Pure: the same answer always gives the same text.
 */
export function placementText(unit: Unit, answer: PlacementAnswer, { columns, colour }: Screen): string {
  const wide = Math.min(COLUMNS.most, Math.max(COLUMNS.least, columns))
  const lines = answer.faces.flatMap((faceAnswer) => {
    const face = unit.faces.find(({ id }) => id === faceAnswer.face)
    return face ? [...faceLines(unit, face, faceAnswer, { columns: wide, colour }), ''] : []
  })
  return `${[...lines, ...wrap(CAUTION, wide)].join('\n')}\n`
}

function faceLines(unit: Unit, face: Face, answer: FaceAnswer, { columns, colour }: Screen): string[] {
  const paint = painter(colour)
  const tray = trayOf(unit, face)
  const holes = face.holes.flatMap(({ id }) =>
    Object.hasOwn(answer.holes, id) ? [[id, answer.holes[id]!] as const] : [],
  )
  const title = face.name ? `${face.name} (${face.id})` : face.id
  const heading = wrap(title, columns)
  return [
    ...heading.map((line) => paint(line, 'bold')),
    '─'.repeat(Math.min(columns, Math.max(...heading.map(width)))),
    ...wrap(atAGlance(answer, tray), columns).map((line) => paint(line, 'bold')),
    '',
    ...wrap(tally(answer), columns, '  '),
    ...holeLines(holes, tray, columns, paint),
    ...conflictLines(answer, columns),
    ...section(
      'Moves',
      roundsToDo(answer).map((round) => roundByHand(round, tray)),
      columns,
    ),
    ...section(
      'To get',
      answer.wanted.map(({ hole, why }) => stopped(`hole ${hole}: ${why}`)),
      columns,
    ),
    ...section('Left over', leftOver(unit, answer, tray), columns),
    ...section(
      'Next reading',
      answer.next ? [`${stopped(answer.next.why)} About ${minutes(answer.next.minutes)}.`] : [],
      columns,
    ),
    ...section('How sure', howSure(answer), columns),
  ]
}

/**
 * "14 holes: 11 settled, 2 open, 1 contradicted. Readings alone settle 4; for the other 7 the tray's contents count too." Where another standard
 * length would fit as well, a wrong bolt in the tray would not be noticed, and that is worth knowing.
 */
function tally(answer: FaceAnswer): string {
  const verdicts = Object.values(answer.holes).map(({ verdict }) => verdict)
  const parts = (['settled', 'open', 'contradicted'] as const)
    .map((verdict) => [verdict, verdicts.filter((one) => one === verdict).length] as const)
    .filter(([, count]) => count > 0)
    .map(([verdict, count]) => `${count} ${verdict}`)
  const settled = Object.values(answer.holes).filter(({ verdict }) => verdict === 'settled')
  const byTray = settled.filter(({ proven }) => proven === false).length
  const byReadings = settled.length - byTray
  const how =
    byTray === 0
      ? ''
      : byReadings === 0
        ? " All by readings and the tray's contents together."
        : ` Readings alone settle ${byReadings}; for the other ${byTray} the tray's contents count too.`
  return `${verdicts.length} ${verdicts.length === 1 ? 'hole' : 'holes'}: ${parts.join(', ')}.${how}`
}

function section(title: string, items: readonly string[], columns: number): string[] {
  return items.length === 0 ? [] : ['', title, ...items.flatMap((item) => wrap(item, columns, '  · '))]
}

function conflictLines(answer: FaceAnswer, columns: number): string[] {
  const conflicts: Conflict[] = [...(answer.conflict ? [answer.conflict] : []), ...(answer.furtherConflicts ?? [])]
  return conflicts.flatMap(({ why, doubt }) => [
    '',
    'Contradiction',
    ...wrap(stopped(why), columns, '  '),
    ...(doubt.length > 0 ? wrap('To doubt, the likeliest first:', columns, '  ') : []),
    ...doubt
      .slice(0, 5)
      .flatMap((one, i) =>
        wrap(`${doubt.length > 1 ? `${percent(one.likely)}: ` : ''}${stopped(one.why)}`, columns, `  ${i + 1}. `),
      ),
  ])
}

function leftOver(unit: Unit, answer: FaceAnswer, tray: ReadonlyMap<string, Kind>): string[] {
  const faceName = (id: string) => unit.faces.find((face) => face.id === id)?.name ?? id
  return Object.entries(answer.leftOver)
    .filter(([, count]) => count > 0)
    .map(([id, count]) => {
      const others = answer.leftOverFits && Object.hasOwn(answer.leftOverFits, id) ? answer.leftOverFits[id]! : []
      return `${count} of ${boltName(id, tray)}${others.length > 0 ? `: would fit a hole of ${listed(others.map(faceName), 'or')}` : ''}`
    })
}

function howSure(answer: FaceAnswer): string[] {
  if (answer.likelihood.method === 'exact' || answer.likelihood.standardError === undefined) return []
  return [
    `The shares are sampled, each within about ${(answer.likelihood.standardError * 200).toFixed(1)} points of a hundred.`,
  ]
}

function minutes(count: number): string {
  return count < 1 ? 'half a minute' : count === 1 ? 'one minute' : `${Math.round(count)} minutes`
}
