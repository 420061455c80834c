import { type Interval, type JointAnswer, type JointVerdict, MANUAL_RULES, type Utilisation } from '@gripbook/engine'
import type { BenchAnswer } from '../commands/benchChecks.ts'
import { benchLines, benchSources } from './benchText.ts'
import { kilonewtons, newtonMetres, percent, percentStated, poundFeet, range, wrap } from './jointFigures.ts'
import { type Paint, painter } from './paint.ts'
import type { Screen } from './placementText.ts'
import { wideOf } from './setting.ts'
import { padded } from './width.ts'

const PAINT: Record<JointVerdict['verdict'], Paint> = {
  'would break the bolt': 'red',
  'would strip the case': 'red',
  'would yield the bolt': 'red',
  'not for this size': 'red',
  high: 'yellow',
  low: 'yellow',
  'in the usual band': 'green',
}

/**
 * The answer of `gripbook joint` for a person at the bench: the verdicts first, worst first, then what is usual, the clamp load, how much of
 * each part is used with the figures behind it, what to set on the wrench, cautions, what was not checked and where the figures come from.
 */
export function jointText(
  answer: JointAnswer,
  bench: BenchAnswer,
  stated: string,
  { columns, colour }: Screen,
): string {
  const wide = wideOf(columns)
  const paint = painter(colour)
  const { thread, clamp } = answer
  const carried =
    clamp.middle > answer.class.breakingLoad
      ? `, more than the bolt is sure to carry (${(answer.class.breakingLoad / 1000).toFixed(1)} kN)`
      : ''
  const inNewtonMetres = / N·m$/.test(stated) ? '' : ` = ${newtonMetres(answer.torque.atBolt)}`
  const lines = [
    ...wrap(`${thread} ${answer.class.name}, ${stated}${inNewtonMetres}`, wide),
    '',
    ...answer.verdicts.flatMap((verdict) => verdictLines(verdict, wide, paint)),
    ...(bench.angle && answer.verdicts.some(({ verdict }) => verdict === 'low')
      ? wrap('Before an angle a low torque is usual.', wide, '  ')
      : []),
    ...benchLines(bench, wide, paint),
    '',
    ...wrap(usualLine(answer), wide),
    ...sizeLines(answer, wide),
    ...wrap(
      `Clamp load ${kilonewtons(clamp)}, ${(clamp.middle / 1000).toFixed(1)} kN in the middle${carried} (most over least ${clamp.scatter.toFixed(1)}): friction ${range(answer.friction.mu, 2)} (${answer.friction.condition}), wrench ±${percentStated(answer.torque.deviation)}. Head: ${answer.head.name}.`,
      wide,
    ),
    '',
    ...useLines(answer.utilisations),
    ...engagementLines(answer, wide),
    ...wrenchLines(answer, wide),
    ...section('Mind', answer.cautions, wide),
    ...section('Not checked', answer.notChecked, wide),
    ...section('Figures from', [...answer.sources, ...benchSources(bench)], wide),
    '',
    ...wrap(MANUAL_RULES, wide),
  ]
  return `${lines.join('\n')}\n`
}

/** The answer where no torque was stated: `title` says what was asked about, then each finding and where the figures come from. */
export function benchText(bench: BenchAnswer, title: string, { columns, colour }: Screen): string {
  const wide = wideOf(columns)
  const lines = [
    ...wrap(title, wide),
    '',
    ...benchLines(bench, wide, painter(colour)),
    ...section('Figures from', benchSources(bench), wide),
    '',
    ...wrap(MANUAL_RULES, wide),
  ]
  return `${lines.join('\n')}\n`
}

function verdictLines(
  { verdict, where, why }: JointVerdict,
  wide: number,
  paint: (text: string, p: Paint) => string,
): string[] {
  const head = where === 'over the whole range' ? verdict : `${verdict}, ${where}`
  return [paint(head.toUpperCase(), PAINT[verdict]), ...wrap(`${why}.`, wide, '  ')]
}

function usualLine({ thread, class: { name }, usual: { band, book } }: JointAnswer): string {
  const printed = book ? ` A book prints ${newtonMetres(book.band)} (${book.source}).` : ''
  return `Usual for ${thread} ${name}: ${newtonMetres(band)} (${poundFeet(band)}).${printed}`
}

function sizeLines({ verdicts }: JointAnswer, wide: number): string[] {
  const sizes = verdicts.flatMap(({ usualFor }) => usualFor ?? [])
  if (sizes.length === 0) return []
  const list = sizes.map(({ thread, band }) => `${thread} (${newtonMetres(band)}, ${poundFeet(band)})`).join(', ')
  return wrap(`The stated torque is usual for ${list}.`, wide)
}

function useLines(list: readonly Utilisation[]): string[] {
  const width = Math.max(...list.map(({ part }) => part.length)) + 2
  const row = (part: string, least: string, middle: string, most: string, figures: string): string =>
    `${padded(part, width)}${least.padStart(6)} ${middle.padStart(7)} ${most.padStart(6)}   ${figures}`.trimEnd()
  return [
    row('How much is used', 'least', 'middle', 'most', ''),
    ...list.map(({ part, share, load, limit, unit }) =>
      row(part, percent(share.lo), percent(share.middle), percent(share.hi), figures(load, limit, unit)),
    ),
  ]
}

function figures(load: Interval, limit: Interval, unit: 'MPa' | 'N'): string {
  const [scale, decimals, name] = unit === 'N' ? [1000, 1, 'kN'] : [1, 0, 'MPa']
  const of = (value: Interval): string => range({ lo: value.lo / scale, hi: value.hi / scale }, decimals)
  return `${of(load)} of ${of(limit)} ${name}`
}

function engagementLines({ engagement }: JointAnswer, wide: number): string[] {
  if (!engagement) return []
  const { needed, boltBreaksFirst } = engagement
  return [
    '',
    ...wrap(
      `Engagement: this torque needs ${range(needed, 1)} mm; from ${range(boltBreaksFirst, 1)} mm on the bolt breaks before the hole strips (full threads, no chamfer counted).`,
      wide,
    ),
  ]
}

function wrenchLines({ torque: { atBolt, onWrench, drag } }: JointAnswer, wide: number): string[] {
  if (onWrench.lo === atBolt.lo && onWrench.hi === atBolt.hi) return []
  const added = drag === undefined ? '' : `, ${newtonMetres({ lo: drag, hi: drag })} of drag counted in`
  return ['', ...wrap(`Set the wrench to ${newtonMetres(onWrench)} (${poundFeet(onWrench)})${added}.`, wide)]
}

function section(title: string, list: readonly string[], wide: number): string[] {
  return list.length === 0 ? [] : ['', title, ...list.flatMap((text) => wrap(text, wide, '- '))]
}
