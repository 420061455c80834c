import {
  angleTightening,
  type BearingRing,
  type BoltClass,
  type CameToRest,
  type ClampRange,
  headsFor,
  type Interval,
  type JointAnswer,
  type JointVerdict,
  type JointWanted,
  joint,
  type ParentMaterial,
  reuse,
  type StandardHead,
  type StopDiagnosis,
  socketsFor,
  stressArea,
  swivelRange,
  type Thread,
  turnsToSeat,
  type WrenchFinding,
  whyStopped,
  wrenchFitness,
} from '@gripbook/engine'
import type { BenchAsked } from './benchOptions.ts'
import type { JointAsked } from './jointOptions.ts'

/** Torques in N·m, `setTo` is what the wrench is to be set to; the deviation is a share. */
export type WrenchCheck = {
  range: Interval
  setTo: Interval
  fit: boolean
  findings: WrenchFinding[]
  deviation: number
  calibrated?: string
  due?: string
  today: string
}

/** What a swivel makes of the torque at the bolt in each turn, N·m, with its clamp load in N and the verdicts at either end. */
export type SwivelCheck = {
  angle: number
  atBolt: Interval
  clamp: ClampRange
  verdicts: { least: JointVerdict[]; most: JointVerdict[] }
}

/** Clamp load in N that the angle adds, and with what the torque before it gave; stiffnesses in N/mm; lengths in mm. */
export type AngleCheck = {
  degrees: Interval
  class: { name: string; assumed?: string }
  clamped: Interval
  clampedMaterial: string
  tappedMaterial: string
  stiffness: { bolt: Interval; parts: Interval }
  added: Interval
  total: Interval
  /** Load in N at which the bolt yields at least, in plain tension. */
  yieldLoad: number
  yields: Reached
  sources: string[]
}

type Reached = 'no' | 'at the high end' | 'over the whole range'

/** Turns from the first bite until the head seats and, where the bottom is known, until the tip meets it. */
export type TurnsCheck = {
  pitch: number
  expected: Interval
  toBottom?: Interval
  bottomsFirst?: 'no' | 'possible' | 'sure'
  counted?: number
  rest?: CameToRest
  causes?: StopDiagnosis[]
}

/** What is additional to a torque's own answer: a field for each thing asked. */
export type BenchAnswer = {
  wrench?: WrenchCheck
  swivel?: SwivelCheck
  angle?: AngleCheck
  turns?: TurnsCheck
  reuse?: ReturnType<typeof reuse>
  /** The heads that a socket of this size fits. `fitsThread` says whether one of them is for the thread asked about. */
  socket?: { acrossFlats: number; fits: StandardHead[]; fitsThread?: boolean }
}

/** Answers what is asked beside a torque. `answer` is that of the torque, where there is one; `today` is a day as "2026-03-01". */
export function benchAnswer(asked: JointAsked, answer: JointAnswer | undefined, today: () => string): BenchAnswer {
  const { wrench, swivel, angle, turns, used, socket } = asked.bench
  const { thread, known, torque } = asked
  return {
    ...(wrench && answer ? { wrench: wrenchCheck(wrench, answer, today()) } : {}),
    ...(swivel !== undefined && torque && answer ? { swivel: swivelCheck(swivel, torque.wanted, answer) } : {}),
    ...(angle && thread && known ? { angle: angleCheck(angle, thread, known, answer?.clamp) } : {}),
    ...(turns ? { turns: turnsCheck(turns) } : {}),
    ...(used ? { reuse: reuse(used) } : {}),
    ...(socket === undefined ? {} : { socket: socketCheck(socket, thread) }),
  }
}

/** True when something is wrong: a wrench that is not fit, a torque that a swivel takes out of the usual band, a bolt that yields, stopped early or is stretched. */
export function benchWrong({ wrench, swivel, angle, turns, reuse: used }: BenchAnswer): boolean {
  return (
    wrench?.fit === false ||
    (swivel !== undefined && swivelLeavesBand(swivel)) ||
    angle?.yields === 'over the whole range' ||
    turns?.bottomsFirst === 'sure' ||
    (turns?.causes !== undefined && turns.causes[0]?.cause !== 'seated') ||
    used?.verdict === 'stretched'
  )
}

/** True when the torque is not in the usual band at one end of its swing. */
export function swivelLeavesBand({ verdicts: { least, most } }: SwivelCheck): boolean {
  return [...least, ...most].some(({ verdict }) => verdict !== 'in the usual band')
}

/** Both ends of what it is to be set to must be fit. */
function wrenchCheck(wrench: NonNullable<BenchAsked['wrench']>, { torque }: JointAnswer, today: string): WrenchCheck {
  const ends = [torque.onWrench.lo, torque.onWrench.hi].map((setting) => wrenchFitness(wrench, setting, today))
  const due = ends[0]?.due
  return {
    range: wrench.range,
    setTo: torque.onWrench,
    fit: ends.every(({ fit }) => fit),
    findings: [...new Set(ends.flatMap(({ findings }) => findings))],
    deviation: torque.deviation,
    ...(wrench.calibrated === undefined ? {} : { calibrated: wrench.calibrated }),
    ...(due === undefined ? {} : { due }),
    today,
  }
}

function swivelCheck(angle: number, wanted: JointWanted, { torque }: JointAnswer): SwivelCheck {
  const atBolt = { lo: swivelRange(torque.atBolt.lo, angle).lo, hi: swivelRange(torque.atBolt.hi, angle).hi }
  const at = (lo: number, hi: number): JointAnswer =>
    joint({ ...wanted, torque: { lo, hi }, deviation: torque.deviation })
  return {
    angle,
    atBolt,
    clamp: at(atBolt.lo, atBolt.hi).clamp,
    verdicts: { least: at(atBolt.lo, atBolt.lo).verdicts, most: at(atBolt.hi, atBolt.hi).verdicts },
  }
}

/** What is known of a joint beside its torque. */
export type KnownJoint = {
  strength: BoltClass
  ring: BearingRing
  parent?: ParentMaterial
  seat?: ParentMaterial
  engagement?: Interval
}

function angleCheck(
  { angle, clamped, shank }: NonNullable<BenchAsked['angle']>,
  thread: Thread,
  { strength, ring, parent, seat, engagement }: KnownJoint,
  before: ClampRange | undefined,
): AngleCheck {
  // the options ask for the material of the hole together with an angle, and the seat is of that material where no other is given
  const [tapped, under] = [parent!, seat!]
  const { bolt, parts, added } = angleTightening({
    thread,
    angle,
    clamped,
    ...(shank ? { shank } : {}),
    ...(engagement ? { engagement } : {}),
    bearing: ring.outer,
    hole: ring.inner,
    youngClamped: under.young,
    youngTapped: tapped.young,
  })
  const total = { lo: added.lo + (before?.lo ?? 0), hi: added.hi + (before?.hi ?? 0) }
  const yieldLoad = stressArea(thread) * strength.yield
  return {
    degrees: angle,
    class: { name: strength.name, ...(strength.assumed === undefined ? {} : { assumed: strength.assumed }) },
    clamped,
    clampedMaterial: under.name,
    tappedMaterial: tapped.name,
    stiffness: { bolt, parts },
    added,
    total,
    yieldLoad,
    yields: total.lo > yieldLoad ? 'over the whole range' : total.hi > yieldLoad ? 'at the high end' : 'no',
    sources: [
      'stiffness of bolt and parts: Shigley 9e, sections 8-4 and 8-5, frusta of 30°',
      ...new Set([tapped, under].map(({ name, sources }) => `Young's modulus of ${name}: ${sources.young}`)),
    ],
  }
}

/** The tip meets the bottom after as many turns as a bolt whose head would seat with its tip there. */
function turnsCheck({ bottom, stopped, ...wanted }: NonNullable<BenchAsked['turns']>): TurnsCheck {
  const expected = turnsToSeat(wanted)
  const toBottom = bottom && turnsToSeat({ ...wanted, stickOut: bottom })
  return {
    pitch: wanted.pitch,
    expected,
    ...(bottom && toBottom
      ? {
          toBottom,
          bottomsFirst: bottom.hi < wanted.stickOut.lo ? 'sure' : bottom.lo < wanted.stickOut.hi ? 'possible' : 'no',
        }
      : {}),
    ...(stopped ? { ...stopped, causes: whyStopped(stopped.counted, expected, stopped.rest, toBottom) } : {}),
  }
}

function socketCheck(acrossFlats: number, thread: Thread | undefined): NonNullable<BenchAnswer['socket']> {
  const fits = socketsFor(acrossFlats)
  if (!thread) return { acrossFlats, fits }
  const heads = headsFor(thread)
  return { acrossFlats, fits, fitsThread: fits.some((head) => heads.includes(head)) }
}
