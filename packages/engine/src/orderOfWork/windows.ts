import type { Before } from './answer.ts'
import { type Bits, emptyBits, hasBit, joinBits, meet, setBit } from './bits.ts'
import type { OpenedWindow } from './relations.ts'

/** A window by the numbers of its jobs. */
export type WindowRule = {
  opens: number
  until: number[]
  most: number
  least: number
  running: boolean
  /** Jobs that lie between opening and closing whatever the order, the jobs of `until` among them. */
  members: Bits
  /** While it runs only jobs of `allowed` are done: sealant does not wait for other work. Not so where parts must stand a least time. */
  strict: boolean
  allowed: Bits
  /** Whether it is kept depends on the order inside. */
  tight: boolean
}

export type Ordered = {
  reasons: Before[]
  /** For each job all that must be done before it, and all that comes after it. */
  before: Bits[]
  after: Bits[]
  rules: WindowRule[]
}

/**
 * Windows with what follows from them: whatever a job of `until` waits for and the opening does not lead to is done before the opening. Windows that
 * cannot be kept apart run together. Undefined when the reasons run in a circle; `reasons` then holds those that do.
 */
export function withWindows(
  ids: readonly string[],
  stated: readonly Before[],
  windows: readonly OpenedWindow[],
): Ordered | { reasons: Before[] } {
  const number = new Map(ids.map((id, i) => [id, i]))
  const reasons = [...stated]
  for (;;) {
    const closed = closureOf(
      ids.length,
      reasons.map(({ earlier, later }) => [number.get(earlier)!, number.get(later)!]),
    )
    if (closed === undefined) return { reasons }
    const rules = windows.map((window) => ruleOf(window, number, closed))
    const together = runTogether(rules, closed.before)
    let added = false
    rules.forEach((rule, w) => {
      if (!rule.strict) return
      rule.allowed = emptyBits(ids.length)
      const group = together[w]!
      for (const other of group) joinBits(rule.allowed, withOpener(rules[other]!))
      rule.tight = group.length > 1
      if (rule.running) return
      for (const closer of rule.until) {
        for (let job = 0; job < ids.length; job += 1) {
          if (!hasBit(closed.before[closer]!, job) || job === rule.opens || hasBit(rule.allowed, job)) continue
          if (hasBit(closed.before[rule.opens]!, job)) continue
          reasons.push({
            earlier: ids[job]!,
            later: ids[rule.opens]!,
            because: 'ready first',
            until: ids[closer]!,
          })
          added = true
        }
      }
    })
    if (added) continue
    for (const rule of rules) {
      if (rule.least > 0 && rule.most < Number.POSITIVE_INFINITY) rule.tight = true
      if (rule.strict && rules.some((soak) => soak.least > 0 && hasBit(withOpener(rule), soak.opens))) rule.tight = true
    }
    // what only soaks has soaked before a window opens that needs it: nobody waits while sealant runs. What must not stand too long may leave no such choice
    for (const soak of rules.filter(({ least }) => least > 0))
      for (const rule of rules.filter(({ strict }) => strict)) {
        if (hasBit(rule.allowed, soak.opens) || !soak.until.some((job) => hasBit(rule.members, job))) continue
        if (soak.most < Number.POSITIVE_INFINITY || rule.running) rule.tight = true
        else soak.until = [...new Set([...soak.until, rule.opens])]
      }
    return { reasons, ...closed, rules }
  }
}

function ruleOf(window: OpenedWindow, number: ReadonlyMap<string, number>, { before, after }: Closed): WindowRule {
  const opens = number.get(window.opens)!
  const until = window.until.map((id) => number.get(id)!)
  const members = emptyBits(before.length)
  for (let job = 0; job < before.length; job += 1) {
    if (job === opens || (!window.running && !hasBit(after[opens]!, job))) continue
    if (until.some((closer) => closer === job || hasBit(before[closer]!, job))) setBit(members, job)
  }
  const { minutes: most = Number.POSITIVE_INFINITY, least = 0, running } = window
  const strict = window.minutes !== undefined && least === 0
  return { opens, until, most, least, running, members, strict, allowed: emptyBits(before.length), tight: false }
}

/** For each window those that share jobs with it, directly or through others, or that are open at once whatever the order. */
function runTogether(rules: readonly WindowRule[], before: readonly Bits[]): number[][] {
  const group = rules.map((_, w) => w)
  const leads = (a: WindowRule, b: WindowRule) => b.until.some((closer) => hasBit(before[closer]!, a.opens))
  for (let a = 0; a < rules.length; a += 1)
    for (let b = 0; b < a; b += 1) {
      const [one, other] = [rules[a]!, rules[b]!]
      if (!one.strict || !other.strict || group[a] === group[b]) continue
      const openAtOnce = (one.running && other.running) || (leads(one, other) && leads(other, one))
      if (!openAtOnce && !meet(withOpener(one), withOpener(other))) continue
      const [from, to] = [group[a]!, group[b]!]
      for (let c = 0; c < rules.length; c += 1) if (group[c] === from) group[c] = to
    }
  return group.map((mine) => group.flatMap((theirs, w) => (theirs === mine && rules[w]!.strict ? [w] : [])))
}

function withOpener({ members, opens }: WindowRule): Bits {
  const all = members.slice()
  setBit(all, opens)
  return all
}

type Closed = { before: Bits[]; after: Bits[] }

/** All that lies before and after each job; undefined when the pairs run in a circle. */
function closureOf(count: number, pairs: readonly (readonly [number, number])[]): Closed | undefined {
  const next: number[][] = Array.from({ length: count }, () => [])
  const waits = new Array<number>(count).fill(0)
  for (const [earlier, later] of pairs) {
    next[earlier]!.push(later)
    waits[later]! += 1
  }
  const sorted = waits.flatMap((open, job) => (open === 0 ? [job] : []))
  const before = Array.from({ length: count }, () => emptyBits(count))
  const after = Array.from({ length: count }, () => emptyBits(count))
  for (const job of sorted)
    for (const later of next[job]!) {
      joinBits(before[later]!, before[job]!)
      setBit(before[later]!, job)
      waits[later]! -= 1
      if (waits[later] === 0) sorted.push(later)
    }
  if (sorted.length < count) return undefined
  for (const job of sorted.toReversed())
    for (const later of next[job]!) {
      joinBits(after[job]!, after[later]!)
      setBit(after[job]!, later)
    }
  return { before, after }
}
