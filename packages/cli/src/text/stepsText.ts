import type { Before, OpenNeed, ReachAnswer, StepsAnswer, Unit, WindowAnswer, WorkClash } from '@gripbook/engine'
import { figure, newtonMetres, percent, wrap } from './jointFigures.ts'
import { listed } from './list.ts'
import { painter } from './paint.ts'
import type { Screen } from './placementText.ts'
import { headed, section, wideOf } from './setting.ts'

const CAUTION =
  'The manual’s order rules; this is a check on it. Local rules and a licensed professional’s judgement come first.'

/** The answer of `gripbook steps` for a person at the bench: clashes first, then the order by tool, windows, what is not ready, what closing would bury, reach. */
export function stepsText(unit: Unit, answer: StepsAnswer, { columns, colour }: Screen): string {
  const wide = wideOf(columns)
  const called = new Map(answer.jobs.map(({ id, name }) => [id, name === undefined ? id : `${name} (${id})`]))
  const title = `The order of work${unit.name === undefined ? '' : `: ${unit.name}`}`
  const lines = [
    ...headed(title, summary(answer), wide, painter(colour)),
    ...section('Clashes', answer.clashes.map(clashWords), wide),
    ...orderLines(answer, called, wide),
    ...section('Windows', answer.windows.map(windowWords), wide),
    ...section('Not ready', answer.notReady.filter(({ need }) => need.ready === false).map(needWords), wide),
    ...section(
      'Nobody has said that it is ready',
      answer.notReady.filter(({ need }) => need.ready === undefined).map(needWords),
      wide,
    ),
    ...section('What closing now would bury', answer.closing.flatMap(closingWords), wide),
    ...section('Reach', answer.reach.flatMap(reachWords), wide),
    ...section(
      'Minutes not known',
      answer.minutesUnknown.length === 0 ? [] : [`Counted as 0: ${listed(answer.minutesUnknown)}.`],
      wide,
    ),
    '',
    ...wrap(CAUTION, wide),
  ]
  return `${lines.join('\n')}\n`
}

const times = (count: number, one: string, many: string): string =>
  `${count === 0 ? 'no' : count} ${count === 1 ? one : many}`

function summary(answer: StepsAnswer): string {
  const { order, toolChanges, turns, minutes, waiting, proven, atLeast, feasible } = answer
  if (order.length === 0) return feasible ? 'Nothing is left to do.' : 'No order keeps all of it.'
  const least = proven
    ? 'No order has fewer together.'
    : `At least ${atLeast} together is proven; this is the best found.`
  const idle = waiting > 0 ? `, ${figure(waiting, 0)} min of it waiting` : ''
  return `${times(order.length, 'job', 'jobs')}, ${times(toolChanges, 'change', 'changes')} of tool, ${times(turns, 'turn', 'turns')} of the unit, about ${figure(minutes, 0)} min${idle}. ${least}`
}

function orderLines({ groups, order }: StepsAnswer, called: ReadonlyMap<string, string>, wide: number): string[] {
  const planned = new Map(order.map((one) => [one.job, one]))
  let number = 0
  return groups.flatMap(({ tools, side, jobs }) => [
    '',
    ...wrap(
      [tools.length > 0 ? tools.join(', then ') : 'By hand', ...(side === undefined ? [] : [side])].join(' · '),
      wide,
    ),
    ...jobs.flatMap((job) => {
      number += 1
      const { wait } = planned.get(job)!
      const first = wait > 0 ? `wait ${figure(wait, 0)} min, then ` : ''
      return wrap(`${first}${called.get(job)}`, wide, `${String(number).padStart(4)}  `)
    }),
  ])
}

function clashWords(clash: WorkClash): string {
  if (clash.what === 'circle') return `In a circle: ${clash.reasons.map(reasonWords).join('; ')}.`
  if (clash.what === 'window')
    return `${clash.opens} opens a window of ${figure(clash.lasts, 1)} min, and ${listed(clash.jobs)} take ${figure(clash.takes, 1)} min.`
  return `${clash.job} is done and buries what is not: ${listed(clash.unfinished)}.`
}

function reasonWords(reason: Before): string {
  const { earlier, later } = reason
  if (reason.because === 'after') return `${later} after ${earlier}, as stated`
  if (reason.because === 'buries') return `${later} after ${earlier}, because ${later} buries ${reason.what}`
  if (reason.because === 'opens') return `${later} after ${earlier}, because ${earlier} opens what ${later} closes`
  return `${later} after ${earlier}, because ${reason.until} needs ${earlier} while what ${later} opens runs`
}

function windowWords(window: WindowAnswer): string {
  const { opens, what, until, minutes, least, takes, chance, minutesUnknown, notReady, before } = window
  const span = [
    ...(least === undefined ? [] : [`stands at least ${figure(least, 1)} min`]),
    ...(minutes === undefined ? [] : [`lasts ${figure(minutes, 1)} min`]),
  ].join(', ')
  const work = `${listed(window.jobs)} take about ${figure(takes.minutes, 1)} ± ${figure(takes.spread, 1)} min`
  const odds =
    chance !== undefined
      ? ` Chance of closing in time: ${chance > 0.99 ? 'over 99 %' : chance < 0.01 ? 'under 1 %' : percent(chance)}.`
      : minutesUnknown.length > 0 && minutes !== undefined
        ? ` The chance of closing in time is not known: no minutes for ${listed(minutesUnknown)}.`
        : ''
  const first = before.length === 0 ? '' : ` Before it is opened: ${times(before.length, 'job', 'jobs')} to do.`
  const open = notReady.length === 0 ? '' : ` Not said to be ready: ${listed(notReady.map(({ need }) => need.name))}.`
  return `${opens}${what === undefined ? '' : ` (${what})`} ${span}, until ${listed(until)}. ${work}.${odds}${first}${open}`
}

const needWords = ({ job, need }: OpenNeed): string =>
  `${need.name}${need.what === undefined ? '' : ` (${need.what})`}, before ${job}`

function closingWords({ job, unfinished, unread, unsigned }: StepsAnswer['closing'][number]): string[] {
  const names = (needs: readonly OpenNeed[]) => listed(needs.map(({ need }) => need.name))
  const parts = [
    ...(unfinished.length === 0 ? [] : [`unfinished ${listed(unfinished)}`]),
    ...(unread.length === 0 ? [] : [`unread ${names(unread)}`]),
    ...(unsigned.length === 0 ? [] : [`unsigned ${names(unsigned)}`]),
  ]
  return parts.length === 0 ? [] : [`${job}: ${parts.join('; ')}.`]
}

function reachWords({ face, hole, final, finding }: ReachAnswer): string[] {
  const how = final.flatMap(({ tool, form, setting, atBolt, reading }) => {
    if (reading === false) return [`${tool} has no reading`]
    if (setting === undefined || atBolt === undefined) return []
    if (form === 'swivel')
      return [`${tool}: the bolt gets ${newtonMetres(atBolt)} at ${newtonMetres(setting)} on the wrench`]
    return form === 'crow-foot' ? [`${tool}: set ${newtonMetres(setting)} for ${newtonMetres(atBolt)}`] : []
  })
  const all = [...how, ...(finding === undefined ? [] : [finding])]
  return all.length === 0 ? [] : [`Hole ${hole} of ${face}: ${all.join('; ')}.`]
}
