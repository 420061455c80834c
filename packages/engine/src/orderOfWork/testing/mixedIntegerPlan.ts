import type { MixedIntegerSolver } from '../../placement/solver.ts'
import type { Job } from '../../unit.ts'
import { blocksOf } from './brokenRules.ts'

/**
 * The fewest changes of tools and turns together, from one mixed-integer model of the whole plan; null when no order keeps it. Which job stands where, which
 * tool is in the hand as each place begins and ends, how the unit lies, and when each place ends. Small plans only.
 */
export function fewestByModel(jobs: readonly Job[], solve: MixedIntegerSolver): number | null {
  const places = jobs.map((_, p) => p)
  const tools = [...new Set(jobs.flatMap((job) => (job.tools ?? []).flatMap(({ any }) => any)))]
  const sides = [...new Set(jobs.flatMap(({ side }) => (side === undefined ? [] : [side])))]
  const x = (j: number, p: number) => `x_${j}_${p}`
  const hand = (when: 'a' | 'b', tool: string, p: number) => `${when}_${tools.indexOf(tool)}_${p}`
  const lies = (side: string, p: number) => `s_${sides.indexOf(side)}_${p}`
  const number = new Map(jobs.map(({ id }, j) => [id, j]))
  const rows: string[] = []
  const binaries: string[] = []
  const horizon = jobs.reduce((sum, { minutes = 0, window }) => sum + minutes + (window?.least ?? 0), 0)
  const place = (j: number, sign: '+' | '-') => places.map((p) => `${sign} ${p + 1} ${x(j, p)}`).join(' ')
  const isBefore = (one: string, other: string) => {
    const [j, k] = [number.get(one)!, number.get(other)!]
    for (const p of places)
      rows.push(
        `${places
          .slice(0, p + 1)
          .map((q) => `+ ${x(k, q)}`)
          .join(' ')} ${places
          .slice(0, p)
          .map((q) => `- ${x(j, q)}`)
          .join(' ')} <= 0`,
      )
  }
  // a window that lasts longer than all work together is never missed, and parts that only soak may be waited for
  const total = jobs.reduce((sum, { minutes = 0 }) => sum + minutes, 0)
  const isTimed = ({ window }: Job) =>
    window?.minutes !== undefined && (window.least !== undefined || window.minutes < total)
  const timed = jobs.some(isTimed)
  const clocked = new Set(jobs.flatMap(({ id, window }) => (window === undefined ? [] : [id, ...window.until])))

  for (const p of places) {
    rows.push(`${jobs.map((_, j) => `+ ${x(j, p)}`).join(' ')} = 1`)
    for (const when of ['a', 'b'] as const)
      if (tools.length > 0) rows.push(`${tools.map((tool) => `+ ${hand(when, tool, p)}`).join(' ')} = 1`)
    if (sides.length > 0) rows.push(`${sides.map((side) => `+ ${lies(side, p)}`).join(' ')} = 1`)
    for (const tool of tools) {
      binaries.push(hand('a', tool, p), hand('b', tool, p))
      rows.push(`d_${p} - ${hand('b', tool, p)} + ${hand('a', tool, p)} >= 0`)
      if (p > 0) rows.push(`c_${p} - ${hand('a', tool, p)} + ${hand('b', tool, p - 1)} >= 0`)
    }
    for (const side of sides) {
      binaries.push(lies(side, p))
      if (p > 0) rows.push(`r_${p} - ${lies(side, p)} + ${lies(side, p - 1)} >= 0`)
    }
    if (!timed) continue
    const work = jobs.map(({ minutes = 0 }, j) => `- ${minutes} ${x(j, p)}`).join(' ')
    rows.push(p === 0 ? `e_0 ${work} >= 0` : `e_${p} - e_${p - 1} ${work} >= 0`)
  }
  jobs.forEach(({ id, after = [], buries = [], tools: stages = [], side, window }, j) => {
    rows.push(`${places.map((p) => `+ ${x(j, p)}`).join(' ')} = 1`)
    for (const p of places) {
      binaries.push(x(j, p))
      const [first, second] = stages
      const oneOf = (when: 'a' | 'b', any: readonly string[]) =>
        rows.push(`${any.map((tool) => `+ ${hand(when, tool, p)}`).join(' ')} - ${x(j, p)} >= 0`)
      if (first) oneOf('a', first.any)
      if (second) oneOf('b', second.any)
      if (side !== undefined) rows.push(`${lies(side, p)} - ${x(j, p)} >= 0`)
      // the end of the job is the end of its place
      if (timed && clocked.has(id))
        rows.push(
          `E_${j} - e_${p} - ${horizon} ${x(j, p)} >= -${horizon}`,
          `E_${j} - e_${p} + ${horizon} ${x(j, p)} <= ${horizon}`,
        )
    }
    for (const earlier of [...after, ...buries]) isBefore(earlier, id)
    for (const closer of window?.until ?? []) {
      isBefore(id, closer)
      if (!timed) continue
      const c = number.get(closer)!
      rows.push(`E_${c} - E_${j} >= ${(window!.least ?? 0) + (jobs[c]!.minutes ?? 0)}`)
      if (window!.minutes !== undefined) rows.push(`E_${c} - E_${j} <= ${window!.minutes}`)
    }
  })
  blocksOf(jobs).forEach(({ opens, until, allowed }, w) => {
    const o = number.get(opens)!
    jobs.forEach(({ id }, k) => {
      if (allowed.has(id)) return
      const big = jobs.length + 1
      binaries.push(`z_${w}_${k}`)
      rows.push(`${place(o, '+')} ${place(k, '-')} + ${big} z_${w}_${k} >= 1`)
      for (const closer of until)
        rows.push(`${place(k, '+')} ${place(number.get(closer)!, '-')} - ${big} z_${w}_${k} >= ${1 - big}`)
    })
  })
  const cost = places.flatMap((p) => [
    ...(tools.length > 0 ? [`d_${p}`, ...(p > 0 ? [`c_${p}`] : [])] : []),
    ...(sides.length > 0 && p > 0 ? [`r_${p}`] : []),
  ])
  binaries.push(...cost)
  if (cost.length === 0) cost.push(`0 ${x(0, 0)}`)
  const text = `Minimize\n obj: ${cost.map((name) => `+ ${name}`).join(' ')}\nSubject To\n${rows
    .map((row, i) => ` r${i}: ${row}`)
    .join('\n')}\nBinary\n${binaries.map((name) => ` ${name}`).join('\n')}\nEnd\n`
  const { status, values } = solve(text)
  return status === 'infeasible' ? null : Math.round(cost.reduce((sum, name) => sum + (values[name] ?? 0), 0))
}
