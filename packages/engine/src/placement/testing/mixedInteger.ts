import { must } from '../../must.ts'
import { type Interval, intervalOf } from '../../quantity/interval.ts'
import type { Quantity } from '../../quantity/quantity.ts'
import type { Face, Kind } from '../../unit.ts'
import type { SolverAnswer } from './highs.ts'

/**
 * The whole face as one mixed-integer model, asked the same questions as the engine: is there a complete placement, can this kind stand in
 * this hole, what is the fewest changes, how few holes need stay empty. One yes-or-no variable per hole and kind, one number per quantity
 * that is not known exactly; a line of a fit is let go by as much as the ranges of its quantities could break it when its bolt is
 * not there. The solver keeps every row to 1e-9 mm and every yes-or-no to 1e-9, so a let-go of some hundred mm lets a line slip by less than
 * 1e-6 mm: figures on a grid of 0.01 mm or coarser are told apart safely.
 */
export type MixedIntegerModel = {
  feasible(): boolean
  may(hole: string, kind: string): boolean
  /** Every pair's `may`, hole by hole in the order of the tray. A placement found answers for all its pairs, so fewer questions are put. */
  everyMay(): Record<string, string[]>
  /** null when there is no complete placement. */
  fewestChanges(): number | null
  /** null when the figures contradict each other with every hole empty. */
  fewestEmpty(): number | null
  /** How many models the solver was given. */
  readonly asked: number
}

const COARSE_PITCH = new Map([
  ['M5', 0.8],
  ['M6', 1],
  ['M8', 1.25],
  ['M10', 1.5],
  ['M12', 1.75],
])

type Sum = { constant: number; parts: Map<string, number> }

export function mixedInteger(
  face: Face,
  solve: (text: string) => SolverAnswer,
  tray: readonly Kind[] = face.kinds ?? [],
): MixedIntegerModel {
  const ranges = new Map<string, Interval>()
  const define = (name: string, range: Interval) => {
    ranges.set(name, range)
    return name
  }
  const nought: Interval = { lo: 0, hi: 0 }
  const given = (quantity: Quantity | undefined, otherwise?: Interval) =>
    quantity === undefined && otherwise ? otherwise : intervalOf(quantity)
  const pitches = (thread: string | readonly string[]) =>
    (typeof thread === 'string' ? [thread] : thread).map((name) => COARSE_PITCH.get(name) ?? Number.NaN)

  if (face.gasket !== undefined) define('P', given(face.gasket))
  for (const [h, hole] of face.holes.entries()) {
    define(`G${h}`, given(hole.grip))
    define(`W${h}`, given(hole.bracket, nought))
    if (hole.gasket !== undefined) define(`P${h}`, given(hole.gasket))
    define(`C${h}`, given(hole.mouth, nought))
    define(`T${h}`, given(hole.threadDepth))
    define(`D${h}`, given(hole.bottomDepth))
    if (hole.behind !== undefined) define(`F${h}`, given(hole.behind))
  }
  for (const [k, kind] of tray.entries()) {
    const own = pitches(kind.thread)
    define(`L${k}`, given(kind.length))
    define(`B${k}`, given(kind.threadLength))
    define(`U${k}`, given(kind.tip, { lo: Math.min(...own), hi: 2 * Math.max(...own) }))
    const washer = typeof kind.washer === 'object' && 'thickness' in kind.washer ? kind.washer.thickness : kind.washer
    define(`V${k}`, given(washer, nought))
  }
  capUnknowns(face, tray, ranges)

  const sum = (...terms: (readonly [string, number])[]): Sum => {
    const made: Sum = { constant: 0, parts: new Map() }
    for (const [name, factor] of terms) {
      const range = ranges.get(name)
      must(range !== undefined, 'a quantity of the model', name)
      if (range.lo === range.hi) made.constant += factor * range.lo
      else made.parts.set(name, (made.parts.get(name) ?? 0) + factor)
    }
    return made
  }
  const gasketOf = (h: number) =>
    face.holes[h]!.gasket !== undefined ? `P${h}` : face.gasket !== undefined ? 'P' : null
  const stickOut = (h: number, k: number, factor: number): [string, number][] => {
    const terms: [string, number][] = [
      [`L${k}`, factor],
      [`G${h}`, -factor],
      [`W${h}`, -factor],
      [`V${k}`, -factor],
    ]
    const gasket = gasketOf(h)
    if (gasket) terms.push([gasket, -factor])
    return terms
  }

  const facts: string[] = []
  /** Σ ≤ most, always or only while `when` is 1. */
  const atMost = (left: Sum, most: number, when?: string): string | null => {
    const right = clean(most - left.constant)
    let greatest = 0
    for (const [name, factor] of left.parts)
      greatest += factor * (factor > 0 ? ranges.get(name)!.hi : ranges.get(name)!.lo)
    const letGo = clean(greatest - right)
    if (letGo <= 0) return null
    const parts = [...left.parts].map(([name, factor]) => `${written(factor)} ${name}`)
    if (when === undefined) return `${parts.length === 0 ? '0 never' : parts.join(' ')} <= ${right}`
    must(Number.isFinite(letGo), 'every let-go has an end', left)
    return `${parts.join(' ')} ${written(letGo)} ${when} <= ${clean(right + letGo)}`
  }
  const fact = (left: Sum, most: number) => {
    const row = atMost(left, most)
    if (row !== null) facts.push(row)
  }

  const pairs: { h: number; k: number; name: string }[] = []
  for (const [h, hole] of face.holes.entries()) {
    const depth = sum([`C${h}`, 1], [`T${h}`, 1], [`D${h}`, -1])
    const sound = hole.ending === 'through' || lowest(depth, ranges) <= 1e-12
    if (hole.ending !== 'through' && sound) fact(depth, 0)
    const least = intervalOf(hole.minimumEngagement ?? face.minimumEngagement).lo
    for (const [k, kind] of tray.entries()) {
      const threads = typeof hole.thread === 'string' ? [hole.thread] : hole.thread
      const shared = (typeof kind.thread === 'string' ? [kind.thread] : kind.thread).filter((name) =>
        threads.includes(name),
      )
      if (shared.length === 0 || (hole.needs ?? []).some((need) => !kind.features?.includes(need))) continue
      if (!sound || lowest(sum([`B${k}`, 1], [`L${k}`, -1]), ranges) > 1e-12) continue
      const name = `x_${h}_${k}`
      pairs.push({ h, k, name })
      const only = (left: Sum, most: number) => {
        const row = atMost(left, most, name)
        if (row !== null) facts.push(row)
      }
      only(sum(...stickOut(h, k, -1), [`U${k}`, 1], [`C${h}`, 1]), -least)
      only(sum([`U${k}`, 1], [`B${k}`, -1]), -least)
      only(sum([`T${h}`, -1]), -least)
      only(sum(...stickOut(h, k, 1), [`C${h}`, -1], [`T${h}`, -1], [`B${k}`, -1]), -least)
      only(sum(...stickOut(h, k, 1), [`B${k}`, -1], [`C${h}`, -1]), 0)
      if (hole.ending !== 'through') {
        only(sum(...stickOut(h, k, 1), [`D${h}`, -1]), 0)
        only(sum(...stickOut(h, k, 1), [`U${k}`, -1], [`C${h}`, -1], [`T${h}`, -1]), 0)
      } else if (hole.behind !== undefined) {
        only(sum(...stickOut(h, k, 1), [`C${h}`, -1], [`T${h}`, -1], [`F${h}`, -1]), 0)
      }
    }
  }
  for (const [k, kind] of tray.entries()) {
    const past = sum([`B${k}`, 1], [`L${k}`, -1])
    if (lowest(past, ranges) <= 1e-12) fact(past, 0)
    if (kind.threadLength === undefined) fact(sum([`L${k}`, 1], [`B${k}`, -1]), 2.5 * Math.max(...pitches(kind.thread)))
  }
  const holeAt = new Map(face.holes.map(({ id }, at) => [id, at]))
  const kindAt = new Map(tray.map(({ id }, at) => [id, at]))
  const letter = { grip: 'G', threadDepth: 'T', bottomDepth: 'D', length: 'L' } as const
  for (const { quantity, less, more } of face.ranks ?? []) {
    const at = quantity === 'length' ? kindAt : holeAt
    fact(sum([`${letter[quantity]}${at.get(less)}`, 1], [`${letter[quantity]}${at.get(more)}`, -1]), 0)
  }
  for (const [t, trial] of (face.trials ?? []).entries()) {
    const h = holeAt.get(trial.hole)!
    const k = kindAt.get(trial.kind)!
    if ('stickOut' in trial) {
      const { lo, hi } = intervalOf(trial.stickOut)
      fact(sum(...stickOut(h, k, -1)), -lo)
      fact(sum(...stickOut(h, k, 1)), hi)
      continue
    }
    if ('proud' in trial) define(`Q${t}`, capped(intervalOf(trial.proud), 1000))
    else {
      // A count of turns is right to half a turn either way.
      const pitch = pitches(tray[k]!.thread)[0]!
      define(`Q${t}`, { lo: Math.max(0, trial.turns - 0.5) * pitch, hi: (trial.turns + 0.5) * pitch })
    }
    fact(sum([`Q${t}`, 1], [`C${h}`, 1], ...stickOut(h, k, -1)), 0)
    fact(sum([`Q${t}`, -1], [`C${h}`, -1], [`U${k}`, -1], ...stickOut(h, k, 1)), 0)
  }

  const counts: string[] = []
  for (const [k, { count }] of tray.entries()) {
    const own = pairs.filter((pair) => pair.k === k).map(({ name }) => name)
    if (count !== undefined && own.length > count) counts.push(`${own.join(' + ')} <= ${count}`)
  }
  const places = (sign: '=' | '<=') =>
    face.holes.map((_, h) => {
      const own = pairs.filter((pair) => pair.h === h).map(({ name }) => name)
      return `${own.length === 0 ? '0 never' : own.join(' + ')} ${sign} 1`
    })
  const ring = goesRound(face)
  const known = [...ranges.values()].every(({ lo, hi }) => lo <= hi)

  let asked = 0
  const ask = (goal: string, rows: readonly string[]): SolverAnswer => {
    asked += 1
    const bounds = [...ranges]
      .filter(([, { lo, hi }]) => lo < hi)
      .map(([name, { lo, hi }]) => ` ${lo} <= ${name} <= ${hi}`)
    const body = [...facts, ...counts, ...rows].map((row, at) => ` r${at}: ${row}`)
    return solve(
      `min\n obj: ${goal}\nst\n${body.join('\n')}\nbounds\n 0 <= never <= 1\n${bounds.join('\n')}\nbinary\n ${pairs.map(({ name }) => name).join('\n ')}\nend\n`,
    )
  }
  const impossible = ring || !known
  const objective = (answer: SolverAnswer, of: readonly string[]) =>
    of.reduce((total, name) => total + Math.round(answer.values[name] ?? 0), 0)

  return {
    feasible: () => !impossible && ask('0 never', places('=')).status === 'optimal',
    may: (hole, kind) => {
      const pair = pairs.find(({ h, k }) => face.holes[h]!.id === hole && tray[k]!.id === kind)
      return (
        !impossible && pair !== undefined && ask('0 never', [...places('='), `${pair.name} >= 1`]).status === 'optimal'
      )
    },
    everyMay: () => {
      const stands = new Set<string>()
      for (const { name } of impossible ? [] : pairs) {
        if (stands.has(name)) continue
        const answer = ask('0 never', [...places('='), `${name} >= 1`])
        if (answer.status === 'infeasible') continue
        for (const pair of pairs) if ((answer.values[pair.name] ?? 0) > 0.5) stands.add(pair.name)
      }
      return Object.fromEntries(
        face.holes.map(({ id }, h) => [id, tray.filter((_, k) => stands.has(`x_${h}_${k}`)).map((kind) => kind.id)]),
      )
    },
    fewestChanges: () => {
      if (impossible) return null
      const changed = pairs
        .filter(({ h, k }) => face.holes[h]!.asFound !== undefined && face.holes[h]!.asFound !== tray[k]!.id)
        .map(({ name }) => name)
      const answer = ask(['0 never', ...changed].join(' + '), places('='))
      return answer.status === 'optimal' ? objective(answer, changed) : null
    },
    fewestEmpty: () => {
      if (impossible) return null
      const all = pairs.map(({ name }) => name)
      const answer = ask(['0 never', ...all].join(' - '), places('<='))
      return answer.status === 'optimal' ? face.holes.length - objective(answer, all) : null
    },
    get asked() {
      return asked
    },
  }
}

/** Takes the dust of float sums off a decimal figure. */
const clean = (value: number) => Math.round(value * 1e9) / 1e9
const written = (factor: number) => (factor < 0 ? `- ${-factor}` : `+ ${factor}`)
const capped = ({ lo, hi }: Interval, cap: number): Interval => ({ lo, hi: Math.min(hi, Math.max(cap, lo)) })

function lowest({ constant, parts }: Sum, ranges: ReadonlyMap<string, Interval>): number {
  let least = constant
  for (const [name, factor] of parts) least += factor * (factor > 0 ? ranges.get(name)!.lo : ranges.get(name)!.hi)
  return least
}

function goesRound(face: Face): boolean {
  const after = new Map<string, string[]>()
  for (const { quantity, less, more } of face.ranks ?? []) {
    const from = `${quantity}/${less}`
    after.set(from, [...(after.get(from) ?? []), `${quantity}/${more}`])
  }
  const seen = new Map<string, 'on the way' | 'done'>()
  const walk = (at: string): boolean => {
    if (seen.get(at) === 'on the way') return true
    if (seen.has(at)) return false
    seen.set(at, 'on the way')
    const round = (after.get(at) ?? []).some(walk)
    seen.set(at, 'done')
    return round
  }
  return [...after.keys()].some(walk)
}

/**
 * Gives each unknown an end that excludes no placement. Any solution stays one when its unknowns are clipped, all of one sort at one mark,
 * so rank lines stay true: first lengths (with their thread lengths) at what every hole and trial could still ask for, then grips, then
 * thread depths, then bottom depths. Sound while not both a grip and a length are without an end; more than that is refused.
 */
function capUnknowns(face: Face, tray: readonly Kind[], ranges: Map<string, Interval>): void {
  const all = (letter: string) => [...ranges].filter(([name]) => name[0] === letter).map(([, range]) => range)
  const most = (letter: string) => Math.max(0, ...all(letter).map(({ hi }) => hi))
  const floor = (letter: string) => Math.max(0, ...all(letter).map(({ lo, hi }) => (Number.isFinite(hi) ? hi : lo)))
  const clip = (letter: string, mark: number) => {
    for (const [name, range] of ranges) if (name[0] === letter) ranges.set(name, capped(range, mark))
  }
  for (const letter of 'WPCUV')
    must(Number.isFinite(most(letter)), 'the model wants an end on bracket, gasket, mouth, tip and washer', letter)
  const openGrip = !Number.isFinite(most('G'))
  must(!(openGrip && !Number.isFinite(most('L'))), 'the model wants an end on all grips or on all lengths')
  const engagement = Math.max(
    ...face.holes.map((hole) => intervalOf(hole.minimumEngagement ?? face.minimumEngagement).lo),
  )
  let tried = 0
  for (const trial of face.trials ?? []) {
    if ('turns' in trial) tried = Math.max(tried, trial.turns * 2)
    else {
      const { lo, hi } = intervalOf('proud' in trial ? trial.proud : trial.stickOut)
      tried = Math.max(tried, Number.isFinite(hi) ? hi : lo)
    }
  }
  const stack = most('W') + most('P') + most('V') + most('C') + most('U') + engagement + tried
  if (!openGrip) clip('L', Math.max(most('G') + stack + floor('B'), floor('L')))
  else clip('G', Math.max(most('L'), floor('G')))
  clip('B', most('L'))
  const out = most('L')
  const threads = Math.max(out + engagement, floor('T'))
  clip('T', threads)
  clip('D', Math.max(threads + most('C'), out, floor('D')))
  clip('F', Math.max(out, floor('F')))
  must(tray.length === all('L').length, 'a length per kind')
}
