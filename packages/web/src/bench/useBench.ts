/** What is known at the bench of this face: its steps, which one is looked at, the bolt and the wrench for it, and how to say that it is done. */
import type { Face, FaceAnswer, Kind, Pair } from '@gripbook/engine'
import { torqueAtBolt, wrenchDeviation } from '@gripbook/engine'
import { trayOf } from '@gripbook/print'
import type { Facts, FoldedUnit, Happening, Stop } from '@gripbook/record'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { namesOf } from '../face/kindNames.ts'
import { type FaceNow, useAnswer } from '../workers/useAnswer.ts'
import { type Bracket, bracketsAt } from './bracket.ts'
import { stopsAt, withReason } from './doing.ts'
import { belongsBy, type KindAt, kindAt } from './kindAt.ts'
import { type BenchStep, benchSteps, nextOf, roundMates } from './round.ts'
import { dayOf } from './today.ts'
import { newtonMetres } from './torque.ts'
import { useWrench, type WrenchHere } from './useWrench.ts'

export type Held = { happenings: readonly Happening[]; stops: readonly Stop[] }

export type Bench = {
  folded: FoldedUnit
  face: Face
  answer: FaceAnswer | null
  now: FaceNow
  steps: readonly BenchStep[]
  step: BenchStep
  next: BenchStep | null
  mates: readonly BenchStep[]
  /** Another step than the next one is looked at. */
  away: boolean
  look(step: BenchStep | null): void
  kinds: readonly Kind[]
  named(kind: string): string
  at: KindAt
  /** What belongs where is still worked out. */
  waiting: boolean
  /** The kind of this step: as known, or as chosen for it. */
  kind: Kind | null
  pick(kind: string): void
  pair: Pair | null
  brackets: readonly Bracket[]
  wrench: WrenchHere
  /** N·m that the bolt is to get in this step. */
  wanted: number | null
  facts: Facts
  held: Held | null
  release(): void
  /** Writes it, unless a stop stands against it: then it is held, and the screen asks. */
  act(happenings: readonly Happening[], reason?: string): Promise<boolean>
  /** A job on the record as all that was done here before has left it: what is shown runs ahead of the disk. One such job after the other. */
  afterAll(job: (folded: FoldedUnit) => Promise<void>): Promise<void>
  /** The reason with which an out-of-date wrench is used on, once it was given here. */
  standing: string | null
}

export function useBench(folded: FoldedUnit, face: Face): Bench {
  const { write, book } = useApp()
  const now = useAnswer(folded, face.id)
  const { answer } = now
  const steps = useMemo(() => benchSteps(folded, face.id), [folded, face.id])
  const next = nextOf(steps)
  const [pin, setPin] = useState<string | null>(null)
  const [picked, setPicked] = useState<{ key: string; kind: string } | null>(null)
  const [held, setHeld] = useState<Held | null>(null)
  const [standing, setStanding] = useState<string | null>(null)
  const busy = useRef<string | null>(null)
  const before = useRef<Promise<unknown>>(Promise.resolve())

  const pinned = steps.find(({ key }) => key === pin)
  const step = pinned ?? next ?? steps.at(-1)!
  useUnpin(pinned, () => setPin(null))

  const kinds = useMemo(() => [...trayOf(folded.unit, face).values()], [folded.unit, face])
  const names = useMemo(() => namesOf(kinds), [kinds])
  const work = folded.faces[face.id]
  const hole = face.holes.find(({ id }) => id === step.hole)
  const placed = hole === undefined ? undefined : work?.holes[hole.id]?.placed?.value
  // A choice that goes away under the finger is none: the sums are waited for.
  const waiting = answer === null && now.working
  const at: KindAt =
    hole === undefined || (waiting && placed === undefined)
      ? { kind: null, choices: [] }
      : kindAt(hole, placed, answer, kinds)
  const chosen = picked?.key === step.key ? picked.kind : at.kind
  const kind = kinds.find(({ id }) => id === chosen) ?? null
  const pair = answer?.pairs.find((one) => one.hole === step.hole && one.kind === chosen) ?? null
  const wrench = useWrench(folded, face.id)
  const wanted = newtonMetres(step.wanted)
  const brackets = useMemo(
    () => (step.hole === null ? [] : bracketsAt(folded, face.id, step.hole)),
    [folded, face.id, step.hole],
  )
  const facts: Facts = {
    today: dayOf(new Date()),
    ...belongsBy(face.id, answer),
    ...deviationOf(wrench, wanted),
    ...rangeOf(wrench),
  }

  async function act(happenings: readonly Happening[], reason?: string): Promise<boolean> {
    const stops = stopsAt(folded, happenings, facts)
    const given = reason ?? (stops.every(({ gate }) => gate === 'calibration') ? (standing ?? undefined) : undefined)
    if (stops.length > 0 && given === undefined) {
      setHeld({ happenings, stops })
      return false
    }
    // A pedal that bounces or two quick taps are one.
    const text = JSON.stringify(happenings)
    if (busy.current === text) return false
    busy.current = text
    const all = given === undefined ? happenings : withReason(folded, happenings, facts, given)
    const writing = write(folded.id, all)
    before.current = Promise.all([before.current, writing])
    const done = await writing
    busy.current = null
    if (done === null) return false
    if (reason !== undefined && stops.some(({ gate }) => gate === 'calibration')) setStanding(reason)
    setHeld(null)
    // Another step may have been looked at meanwhile: it stays.
    setPin((now) => (now === pin ? null : now))
    return true
  }

  function afterAll(job: (folded: FoldedUnit) => Promise<void>): Promise<void> {
    const done = before.current.then(async () => job(await book.device.unitOf(folded.id)))
    before.current = done.catch(() => {})
    return done
  }

  return {
    folded,
    face,
    answer,
    now,
    steps,
    step,
    next,
    mates: roundMates(steps, step),
    away: pinned !== undefined && pinned !== next,
    look: (to) => setPin(to === null || to.key === next?.key ? null : to.key),
    kinds,
    named: (id) => names.long.get(id) ?? id,
    at,
    waiting,
    kind,
    pick: (id) => setPicked({ key: step.key, kind: id }),
    pair,
    brackets,
    wrench,
    wanted,
    facts,
    held,
    release: () => setHeld(null),
    act,
    afterAll,
    standing,
  }
}

/** A step that is looked at and gets done, here or on another device, is left: the work moves on. One that was done before stays. */
function useUnpin(pinned: BenchStep | undefined, unpin: () => void): void {
  const was = useRef<{ key: string; done: boolean } | null>(null)
  useEffect(() => {
    const before = was.current
    was.current = pinned === undefined ? null : { key: pinned.key, done: pinned.done !== null }
    if (pinned !== undefined && before?.key === pinned.key && !before.done && pinned.done !== null) unpin()
  })
}

/** No wider than what the record is judged by later, whatever a certificate says. */
const WIDEST = 0.06

function deviationOf({ wrench }: WrenchHere, wanted: number | null): Pick<Facts, 'deviation'> {
  if (wanted === null) return {}
  return { deviation: Math.min(WIDEST, wrench?.deviation ?? wrenchDeviation(wanted)) }
}

function rangeOf({ wrench, extension }: WrenchHere): Pick<Facts, 'range'> {
  if (wrench?.range === undefined) return {}
  const [atLeast, atMost] = wrench.range.map((end) => (extension === null ? end : torqueAtBolt(end, extension)))
  return { range: { atLeast: atLeast!, atMost: atMost! } }
}
