/**
 * Likelihoods in a group that counts alone tie: a forward and backward sum over what is left of each kind, hole by hole. Exact.
 */
import { binsOf, type Group, type GroupTask, logWeight } from './group.ts'

const MOST_STATES = 60_000

/** All ways from one hole's states to the next: from which, to which, by which bin. */
type Steps = { hole: number; from: Int32Array; to: Int32Array; bin: Int32Array }
type Layers = { sizes: number[]; steps: Steps[] }

/** null where there are too many states. */
export function byCounting(group: GroupTask): Group | null {
  const { weights, holes } = group
  const layers = layersOf(group)
  if (!layers) return null
  const logSum = new Float64Array(weights.targets.length)
  const share = weights.targets.map((_, target) => {
    const found = sumLayers(group, target, layers)
    logSum[target] = found.logSum
    return found.share
  })
  return { holes, logSum, share, error: 0, sampled: false }
}

/** A state is what has been used of each kind that may run short, written as one number. */
function layersOf(group: GroupTask): Layers | null {
  const { task, may, holes } = group
  const { bins } = task
  const { radix, room } = digitsOf(group)
  const sizes = [1]
  const steps: Steps[] = []
  let keys = [0]
  let states = 1
  for (const hole of holes) {
    const index = new Map<number, number>()
    const from: number[] = []
    const to: number[] = []
    const bin: number[] = []
    const open = binsOf(may, hole, bins)
    // A settled hole's bolt is out of the tray already.
    const settled = open.length === 1
    keys.forEach((key, state) => {
      for (const b of open) {
        const scarce = !settled && radix[b]! > 0
        if (scarce && Math.floor(key / radix[b]!) % (room[b]! + 1) >= room[b]!) continue
        const then = scarce ? key + radix[b]! : key
        if (!index.has(then)) index.set(then, index.size)
        from.push(state)
        to.push(index.get(then)!)
        bin.push(b)
      }
    })
    states += index.size
    if (states > MOST_STATES) return null
    keys = [...index.keys()]
    sizes.push(keys.length)
    steps.push({ hole, from: Int32Array.from(from), to: Int32Array.from(to), bin: Int32Array.from(bin) })
  }
  return { sizes, steps }
}

/** For each bin that may run short within the group: the place of its digit and how much of it there is. 0 for the others. */
function digitsOf({ task, may, holes }: GroupTask): { radix: Float64Array; room: Float64Array } {
  const radix = new Float64Array(task.bins)
  const room = new Float64Array(task.bins)
  const inDoubt = holes.filter((hole) => binsOf(may, hole, task.bins).length > 1)
  let next = 1
  for (let b = 0; b < task.bins; b++) {
    const users = inDoubt.filter((hole) => may[hole * task.bins + b]).length
    if (users <= task.capacity[b]!) continue
    radix[b] = next
    room[b] = task.capacity[b]!
    next *= room[b]! + 1
  }
  return { radix, room }
}

function sumLayers(
  group: GroupTask,
  target: number,
  { sizes, steps }: Layers,
): { share: Float64Array; logSum: number } {
  const { bins } = group.task
  const share = new Float64Array(group.may.length)
  let logSum = 0
  const factors = steps.map(({ hole }) => {
    const logs = Array.from({ length: bins }, (_, b) =>
      group.may[hole * bins + b] ? logWeight(group, hole * bins + b, target) : Number.NEGATIVE_INFINITY,
    )
    const top = Math.max(...logs)
    logSum += top
    return Float64Array.from(logs, (log) => Math.exp(log - top))
  })
  const after = sizes.map((size) => new Float64Array(size))
  after[steps.length]!.fill(1)
  for (let i = steps.length - 1; i >= 0; i--) {
    const { from, to, bin } = steps[i]!
    const now = after[i]!
    const then = after[i + 1]!
    for (let s = 0; s < from.length; s++) now[from[s]!]! += factors[i]![bin[s]!]! * then[to[s]!]!
    logSum += rescale(now)
  }
  let before = new Float64Array([1])
  for (const [i, { hole, from, to, bin }] of steps.entries()) {
    const next = new Float64Array(sizes[i + 1]!)
    const then = after[i + 1]!
    let all = 0
    for (let s = 0; s < from.length; s++) {
      const reach = before[from[s]!]! * factors[i]![bin[s]!]!
      const whole = reach * then[to[s]!]!
      next[to[s]!]! += reach
      share[hole * bins + bin[s]!]! += whole
      all += whole
    }
    for (let b = 0; b < bins; b++) share[hole * bins + b]! /= all
    rescale(next)
    before = next
  }
  return { share, logSum }
}

/** Divides by the greatest, so that long products stay in range; returns its ln. */
function rescale(values: Float64Array): number {
  let top = 0
  for (const value of values) top = Math.max(top, value)
  for (let i = 0; i < values.length; i++) values[i]! /= top
  return Math.log(top)
}
