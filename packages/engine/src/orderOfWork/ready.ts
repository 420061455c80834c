import type { Job } from '../unit.ts'
import type { ClosingAnswer, OpenNeed, WindowAnswer } from './answer.ts'
import { type Bits, hasBit } from './bits.ts'
import { buriedBy } from './relations.ts'
import { chanceWithin, timeOf } from './times.ts'
import type { WindowRule } from './windows.ts'

/** What a job needs and nobody has said is ready. */
export function openNeeds({ id, needs = [] }: Job): OpenNeed[] {
  return needs
    .map((need) => (typeof need === 'string' ? { name: need } : need))
    .filter(({ ready }) => ready !== true)
    .map((need) => ({ job: id, need }))
}

/** Before a window is opened: what is inside, what is not ready, what must be done first, and the chance of closing in time. */
export function windowAnswer(
  rule: WindowRule,
  jobs: readonly Job[],
  before: readonly Bits[],
  done: Bits,
  elapsed: number,
): WindowAnswer {
  const opener = jobs[rule.opens]!
  const { what, minutes, least } = opener.window!
  // what stands its least time meanwhile lets other work be done; from the first job that waited for it on, all that leads to the last counts
  const afterStanding = (i: number) =>
    rule.until.includes(i) || (hasBit(rule.members, i) && rule.until.some((first) => hasBit(before[i]!, first)))
  const inside = jobs.filter((_, i) => (rule.strict ? hasBit(rule.members, i) : afterStanding(i)))
  const times = inside.map((job) => timeOf(job))
  const minutesUnknown = inside.filter((_, i) => times[i] === undefined).map(({ id }) => id)
  const known = times.filter((time) => time !== undefined)
  const spread = Math.sqrt(known.reduce((sum, time) => sum + time.spread ** 2, 0))
  return {
    opens: opener.id,
    ...(what === undefined ? {} : { what }),
    until: rule.until.map((i) => jobs[i]!.id),
    ...(minutes === undefined ? {} : { minutes }),
    ...(least === undefined ? {} : { least }),
    jobs: inside.map(({ id }) => id),
    takes: { minutes: known.reduce((sum, time) => sum + time.minutes, 0), spread },
    ...(minutes === undefined || minutesUnknown.length > 0
      ? {}
      : { chance: chanceWithin(minutes - Math.max(least ?? 0, elapsed), known) }),
    minutesUnknown,
    notReady: [...(rule.running ? [] : [opener]), ...inside].flatMap(openNeeds),
    before: jobs.filter((_, i) => !hasBit(done, i) && hasBit(before[rule.opens]!, i)).map(({ id }) => id),
  }
}

/** For each closing step still to come: what it would bury, were it done now, that is unfinished, unread or unsigned. */
export function closingAnswers(all: readonly Job[]): ClosingAnswer[] {
  return all
    .filter(({ buries = [], done, skip }) => buries.length > 0 && done !== true && skip !== true)
    .map((job) => {
      const buried = [...new Set(job.buries!.flatMap((what) => buriedBy(job, what, all)))]
      const needs = buried.flatMap(openNeeds)
      return {
        job: job.id,
        unfinished: buried.filter(({ done }) => done !== true).map(({ id }) => id),
        unread: needs.filter(({ need }) => need.what === 'reading'),
        unsigned: needs.filter(({ need }) => need.what === 'signature'),
      }
    })
}
