import type { HoleAnswer, Kind } from '@gripbook/engine'
import { boltName } from '@gripbook/print'
import { listed, stopped } from './list.ts'
import type { Paint } from './paint.ts'
import { padded, width } from './width.ts'
import { wrap } from './wrap.ts'

const MARKS: Record<HoleAnswer['verdict'], { text: string; paint: Paint }> = {
  settled: { text: '● settled', paint: 'green' },
  open: { text: '◐ open', paint: 'yellow' },
  contradicted: { text: '✗ contradicted', paint: 'red' },
}
const FOUND = {
  'must change': '✗\u00a0must\u00a0change',
  'may stay': '◐\u00a0may\u00a0stay',
  right: '●\u00a0right',
} as const

/** Columns below which a bolt's name is not set beside its mark. */
const LEAST_ROOM = 24

type Row = { id: string; hole: HoleAnswer; bolt: string; found: string }
type Widths = { id: number; mark: number; bolt: number }

/**
 * The holes of a face, in its order: number, mark, the bolt that belongs there, what was found, and below it in one line why. Rows are in
 * columns where they have room and run on where they have not.
 */
export function holeLines(
  holes: readonly (readonly [string, HoleAnswer])[],
  tray: ReadonlyMap<string, Kind>,
  columns: number,
  paint: (text: string, paint: Paint) => string,
): string[] {
  const rows = holes.map(([id, hole]): Row => ({ id, hole, bolt: boltOf(hole, tray), found: foundOf(hole, tray) }))
  const widths = {
    id: greatest(
      rows.map((row) => width(row.id)),
      8,
    ),
    mark: greatest(
      rows.map((row) => width(MARKS[row.hole.verdict].text)),
      14,
    ),
    bolt: greatest(
      rows.map((row) => width(row.bolt)),
      28,
    ),
  }
  return rows.flatMap((row) => rowLines(row, widths, columns, paint))
}

function rowLines(
  { id, hole, bolt, found }: Row,
  widths: Widths,
  columns: number,
  paint: (text: string, paint: Paint) => string,
): string[] {
  const mark = MARKS[hole.verdict]
  // a name that would leave no room beside it stands on a line of its own
  const alone = 2 + width(id) + 2 > columns / 2
  const start = alone ? '    ' : `  ${padded(id, widths.id)}  `
  const marked = `${start}${padded(mark.text, widths.mark)}  `
  const indent = ' '.repeat(width(start))
  const whole = `${marked}${padded(bolt, widths.bolt)}  ${found}`.trimEnd()
  const rest = found === '' ? bolt : `${bolt}; ${found}`
  const roomy = columns - width(marked) >= LEAST_ROOM
  const head =
    width(whole) <= columns
      ? [whole.replaceAll('\u00a0', ' ')]
      : wrap(roomy ? rest : `${mark.text.replace(' ', '\u00a0')} ${rest}`, columns, roomy ? marked : start)
  const [first = '', ...more] = head
  const reasons = whyLines(hole).flatMap((why) => wrap(why, columns, `${indent}  `))
  return [
    ...(alone ? wrap(id, columns, '  ') : []),
    first.replace(mark.text, (text) => paint(text, mark.paint)),
    ...more,
    ...reasons,
  ]
}

/** Why, in one line where all is well; where something must change, why what was found cannot stay stands first. */
function whyLines(hole: HoleAnswer): string[] {
  const [firstClause = ''] = hole.why.split('; ')
  const only = hole.may.length === 1 ? hole.may[0] : undefined
  // the sentence of a bolt that fits has the bolt for its subject
  const own =
    only !== undefined && firstClause.startsWith('fits')
      ? `${only} ${firstClause}`
      : hole.verdict === 'settled'
        ? firstClause
        : hole.why
  const change = hole.asFound?.verdict === 'must change' && hole.verdict !== 'contradicted' ? [hole.asFound.why] : []
  return [...change, own].filter((why) => why !== '').map(stopped)
}

/** The bolts that may stand in a hole, the likeliest first; of an open hole with how likely each is. */
function boltOf(hole: HoleAnswer, tray: ReadonlyMap<string, Kind>): string {
  if (hole.may.length === 0) return 'no bolt'
  if (hole.may.length === 1) return boltName(hole.may[0]!, tray)
  const likely = (id: string) => (Object.hasOwn(hole.likely, id) ? hole.likely[id]! : 0)
  const byChance = [...hole.may].sort((a, b) => likely(b) - likely(a))
  const shown = byChance.slice(0, 4).map((id) => `${boltName(id, tray)}\u00a0${percent(likely(id))}`)
  return byChance.length > 4 ? `${shown.join(', ')} or ${byChance.length - 4} more` : listed(shown, 'or')
}

function foundOf(hole: HoleAnswer, tray: ReadonlyMap<string, Kind>): string {
  if (!hole.asFound) return ''
  const { kind, verdict } = hole.asFound
  const what = kind === 'none' ? 'empty' : hole.may.length === 1 && hole.may[0] === kind ? '' : boltName(kind, tray)
  return `found${what === '' ? '' : ` ${what}`}: ${FOUND[verdict]}`
}

/** "72 %"; never 0 % or 100 % for what is neither sure nor out of the question. */
export function percent(likely: number): string {
  if (likely > 0.99 && likely < 1) return 'over\u00a099\u00a0%'
  if (likely > 0 && likely < 0.01) return 'under\u00a01\u00a0%'
  return `${Math.round(likely * 100)}\u00a0%`
}

function greatest(widths: readonly number[], most: number): number {
  return Math.min(most, Math.max(0, ...widths.filter((one) => one <= most)))
}
