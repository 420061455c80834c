/**
 * Many orders on one cover, fast. The bed is condensed once; between two changes of which bolts hold, all loads rise and fall straight with the one that the wrench turns, so a turn
 * is a walk from one such change to the next. The table that gives the slopes is carried along (`pivots.ts`) instead of being solved anew. `tighten.ts` gives the same loads the slow way.
 */
import { carry, copyOf, pivot, put, readColumn, type Stand, standAt } from './pivots.ts'
import type { Bolt } from './tighten.ts'

/** Columns to work in: of the bolt that is turned, and of one that goes over meanwhile. */
type Room = { turned: Float64Array; over: Float64Array }

export type Chain = {
  /** Loads in N after all passes in this sequence of bolts, the same bolts at every call; the array is used again by the next call. */
  loadsAfter: (sequence: ArrayLike<number>) => Float64Array
}

/** For so many turns from its start is kept where the last order stood, for a next one that begins alike: a search asks for neighbours, and the first turns cost most. */
const KEPT = 8

/**
 * `from`: loads and gaps at the start, as `lockedLoads` would have them: bolts tight from an earlier visit hold, bolts run down by hand touch without load (gap 0),
 * loose ones have no end of gap. `shares` rise to 1.
 */
export function chainOf(
  compliance: readonly number[][],
  bolts: readonly Bolt[],
  shares: readonly number[],
  from: { loads: ArrayLike<number>; gaps: ArrayLike<number> },
): Chain {
  const start = standAt(compliance.map((row, i) => row.map((c, j) => (i === j ? c + bolts[i]!.compliance : c))))
  const stride = start.sign.length
  const room: Room = { turned: new Float64Array(stride), over: new Float64Array(stride) }
  for (let j = 0; j < bolts.length; j++) {
    start.level[j] = from.loads[j]! > 0 ? from.loads[j]! : from.gaps[j]!
    if (!(from.loads[j]! > 0)) continue
    readColumn(start, j, room.over)
    room.over = pivot(start, j, room.over)
  }

  const targets = bolts.map(({ target }) => target)
  const turn = (stand: Stand, bolt: number, share: number) => drive(stand, bolt, share * targets[bolt]!, room)
  const afterFirst = new Map<number, Stand>()
  const first = (bolt: number): Stand => {
    const known = afterFirst.get(bolt)
    if (known !== undefined) return known
    const stand = copyOf(start)
    turn(stand, bolt, shares[0]!)
    afterFirst.set(bolt, stand)
    return stand
  }
  const work = copyOf(start)
  const kept = Array.from({ length: Math.min(KEPT, bolts.length) }, () => ({ bolt: -1, stand: copyOf(start) }))
  /** Brings `work` as far as stands are kept, and says how many turns that is. */
  const begin = (sequence: ArrayLike<number>): number => {
    const turns = Math.min(kept.length, sequence.length)
    let alike = 0
    while (alike < turns && kept[alike]!.bolt === sequence[alike]) alike++
    for (let k = alike; k < turns; k++) {
      const one = kept[k]!
      one.bolt = sequence[k]!
      put(k === 0 ? first(one.bolt) : kept[k - 1]!.stand, one.stand)
      if (k > 0) turn(one.stand, one.bolt, shares[0]!)
    }
    put(kept[turns - 1]!.stand, work)
    return turns
  }
  const loads = new Float64Array(bolts.length)
  return {
    loadsAfter(sequence) {
      for (let k = begin(sequence); k < sequence.length; k++) turn(work, sequence[k]!, shares[0]!)
      for (let p = 1; p < shares.length; p++)
        for (let k = 0; k < sequence.length; k++) turn(work, sequence[k]!, shares[p]!)
      for (let j = 0; j < loads.length; j++) loads[j] = loadOf(work, j)
      return loads
    },
  }
}

function loadOf({ level, sign }: Stand, bolt: number): number {
  return sign[bolt]! > 0 ? level[bolt]! : 0
}

/** Turns a bolt up to a load; one that holds it already stays as it is. */
function drive(stand: Stand, bolt: number, load: number, room: Room): void {
  const { level, sign } = stand
  const had = loadOf(stand, bolt)
  if (had >= load) return
  const held = sign[bolt]! > 0
  const { turned } = room
  readColumn(stand, bolt, turned)
  const stride = level.length
  let missing = load - had
  for (;;) {
    // How much its load rises on the way: the column of a loose bolt counts newtons, that of one that holds mm of its nut.
    const rise = held ? -turned[bolt]! : 1
    let way = missing / rise
    let next = -1
    // A load falls where its column is positive, a gap closes where it is negative. Asked first is what is seldom true.
    for (let j = 0; j < stride; j += 4) {
      const s0 = turned[j]! * sign[j]!
      const s1 = turned[j + 1]! * sign[j + 1]!
      const s2 = turned[j + 2]! * sign[j + 2]!
      const s3 = turned[j + 3]! * sign[j + 3]!
      if (level[j]! < way * s0 && s0 > 0) {
        way = level[j]! / s0
        next = j
      }
      if (level[j + 1]! < way * s1 && s1 > 0) {
        way = level[j + 1]! / s1
        next = j + 1
      }
      if (level[j + 2]! < way * s2 && s2 > 0) {
        way = level[j + 2]! / s2
        next = j + 2
      }
      if (level[j + 3]! < way * s3 && s3 > 0) {
        way = level[j + 3]! / s3
        next = j + 3
      }
    }
    for (let j = 0; j < stride; j += 4) {
      level[j]! -= way * (turned[j]! * sign[j]!)
      level[j + 1]! -= way * (turned[j + 1]! * sign[j + 1]!)
      level[j + 2]! -= way * (turned[j + 2]! * sign[j + 2]!)
      level[j + 3]! -= way * (turned[j + 3]! * sign[j + 3]!)
    }
    if (next === -1) break
    missing -= way * rise
    level[next] = 0
    readColumn(stand, next, room.over)
    carry(turned, next, room.over, -sign[next]!)
    room.over = pivot(stand, next, room.over)
  }
  level[bolt] = load
  if (!held) room.turned = pivot(stand, bolt, turned)
}
