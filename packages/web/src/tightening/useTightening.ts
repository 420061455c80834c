/** The order of a face, worked out by the engine's worker: the known patterns first, then the search, whose progress is told and which can be stopped. */
import type { CoverMap, Fault, Read, TighteningAnswer, TighteningProgress, Unit } from '@gripbook/engine'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import type { CoverQuestion, TighteningQuestion } from '../workers/asked.ts'
import { type Asking, newWorker, startAsking } from '../workers/asking.ts'

export type Plan = {
  answer: TighteningAnswer | null
  /** The search is in it. */
  searched: boolean
  faults: readonly Fault[]
  working: TighteningProgress | 'starting' | null
  stopped: boolean
  failed: string | null
  stop(): void
  /** After a stop. */
  again(): void
}

type Known = Pick<Plan, 'answer' | 'searched' | 'faults'>

const NOTHING: Known = { answer: null, searched: false, faults: [] }
/** Answers that are kept while the page is open: going there and back asks nothing anew. */
const KEPT = 8
const kept = new Map<string, Known>()

let planning: Asking<TighteningQuestion, Read<TighteningAnswer>> | null = null
let mapping: Asking<CoverQuestion, Read<CoverMap>> | null = null

/** `shares`: of the passes, for every order but the stated one. */
export function useTightening(unit: Unit | null, face: string, shares: readonly number[]): Plan {
  const key = useMemo(() => (unit === null ? '' : JSON.stringify([unit, face, shares])), [unit, face, shares])
  const [known, setKnown] = useState<{ key: string } & Known>({ key, ...(kept.get(key) ?? NOTHING) })
  const [working, setWorking] = useState<Plan['working']>(null)
  const [stopped, setStopped] = useState(false)
  const [failed, setFailed] = useState<string | null>(null)
  const [asked, setAsked] = useState(0)
  const here = known.key === key ? known : { key, ...(kept.get(key) ?? NOTHING) }

  useEffect(() => {
    if (unit === null) return
    let left = false
    setStopped(false)
    setFailed(null)
    void work().finally(() => left || setWorking(null))
    async function work() {
      const before = kept.get(key)
      if (before !== undefined) setKnown({ key, ...before })
      if (before?.searched === true) return
      setWorking('starting')
      planning ??= startAsking<TighteningQuestion, Read<TighteningAnswer>>(newWorker, 0)
      const question: TighteningQuestion = { what: 'tightening', unit: unit!, face, asked: { shares: [...shares] } }
      const said = await planning.ask(question, (progress, soFar) => {
        if (left) return
        setWorking(progress)
        if (soFar !== undefined) know(soFar, false)
      })
      if (left || said === null) return
      if (said.ok) know(said.answer, true)
      else setFailed(said.why)
    }
    function know(read: Read<TighteningAnswer>, searched: boolean) {
      const next: Known = read.ok
        ? { answer: read.value, searched, faults: [] }
        : { ...NOTHING, searched: true, faults: read.faults }
      keep(key, next)
      setKnown({ key, ...next })
    }
    return () => {
      left = true
    }
  }, [key, asked])

  return {
    answer: here.answer,
    searched: here.searched,
    faults: here.faults,
    working,
    stopped,
    failed,
    stop() {
      planning?.stop()
      setWorking(null)
      setStopped(true)
    },
    again() {
      setAsked(asked + 1)
    },
  }
}

function keep(key: string, known: Known): void {
  kept.delete(key)
  kept.set(key, known)
  for (const old of [...kept.keys()].slice(0, Math.max(0, kept.size - KEPT))) kept.delete(old)
}

export type ShownMap = { map: CoverMap | null; greatest: number; working: boolean; failed: boolean }

/**
 * How the cover lies under the loads of a step, and the greatest pressure under those at the end of the order, so that a shade means the same at
 * every step. Null loads: nothing is asked.
 */
export function useCoverMap(
  unit: Unit | null,
  face: string,
  loads: readonly number[] | null,
  atEnd: readonly number[],
): ShownMap {
  const [shown, setShown] = useState<ShownMap>({ map: null, greatest: 0, working: false, failed: false })
  const [key, endKey] = [loads === null ? '' : JSON.stringify([loads, atEnd]), JSON.stringify([face, atEnd])]
  const end = useRef<{ key: string; unit: Unit; map: CoverMap } | null>(null)
  useEffect(() => {
    if (unit === null || loads === null) return
    let left = false
    const ask = async (under: readonly number[]): Promise<CoverMap | 'failed' | null> => {
      mapping ??= startAsking<CoverQuestion, Read<CoverMap>>(newWorker, 400)
      const said = await mapping.ask({ what: 'cover', unit, face, loads: [...under] })
      return said === null ? null : said.ok && said.answer.ok ? said.answer.value : 'failed'
    }
    void work()
    async function work() {
      setShown((before) => ({ ...before, working: true, failed: false }))
      const known = end.current
      const last = known?.key === endKey && known.unit === unit ? known.map : await ask(atEnd)
      if (left || last === null) return
      const now = loads === atEnd ? last : await ask(loads!)
      if (left || now === null) return
      if (last === 'failed' || now === 'failed') {
        setShown({ map: null, greatest: 0, working: false, failed: true })
        return
      }
      end.current = { key: endKey, unit: unit!, map: last }
      const pressures = last.pressure.filter((value) => value !== null)
      setShown({ map: now, greatest: Math.max(0, ...pressures), working: false, failed: false })
    }
    return () => {
      left = true
    }
  }, [unit, face, key])
  return shown
}
