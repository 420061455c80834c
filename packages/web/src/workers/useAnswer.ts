import type { Face, FaceAnswer, Unit } from '@gripbook/engine'
import { type FoldedUnit, type LeftOut, unitFileOf } from '@gripbook/record'
import { useLayoutEffect, useMemo, useState } from 'preact/hooks'
import { calledByName, renamedAnswer } from './called.ts'
import { type Engine, startEngine } from './engine.ts'

export type FaceNow = {
  /** What was computed on: the unit with this face, and with all faces where they share a tray. Null while the face has no hole. */
  unit: Unit | null
  face: Face | null
  /** The answer to an earlier state stays until the next is here. */
  answer: FaceAnswer | null
  working: boolean
  fault: string | null
  leftOut: readonly LeftOut[]
  stop(): void
}

let engine: Engine | null = null

/** One engine for the page; questions about a face that is no longer looked at give way. */
function theEngine(): Engine {
  engine ??= startEngine()
  return engine
}

/** What belongs where on a face, worked out anew whenever the unit changes. */
export function useAnswer(folded: FoldedUnit | null, face: string): FaceNow {
  const asked = useMemo(() => (folded === null ? null : faceFile(folded, face)), [folded, face])
  const [answer, setAnswer] = useState<FaceAnswer | null>(null)
  const [working, setWorking] = useState(false)
  const [fault, setFault] = useState<string | null>(null)
  const unit = asked?.unit ?? null
  // Entries that change nothing of the sums (a note, a photograph) ask nothing new.
  const text = useMemo(() => (unit === null ? '' : JSON.stringify(unit)), [unit])

  // Before the paint, not after it: the sums run while the page is drawn.
  useLayoutEffect(() => {
    if (unit === null) {
      setAnswer(null)
      return
    }
    let left = false
    setWorking(true)
    setFault(null)
    const called = calledByName(unit)
    void theEngine()
      .ask(called.unit)
      .then((said) => {
        if (left || said === null) return
        setWorking(false)
        const found = said.ok ? said.answer.faces.find((one) => one.face === face) : undefined
        if (said.ok) setAnswer(found === undefined ? null : renamedAnswer(found, (name) => called.idOf(face, name)))
        else setFault(said.why)
      })
    return () => {
      left = true
    }
  }, [text, face])

  return {
    unit,
    face: unit?.faces.find(({ id }) => id === face) ?? null,
    answer,
    working,
    fault,
    leftOut: asked?.leftOut ?? [],
    stop() {
      theEngine().stop()
      setWorking(false)
    },
  }
}

/** The unit file with this face alone, or with all of them where they draw on one tray. */
export function faceFile(folded: FoldedUnit, face: string): { unit: Unit | null; leftOut: LeftOut[] } {
  const shared = (folded.unit.kinds?.length ?? 0) > 0
  const faces = shared ? folded.unit.faces : folded.unit.faces.filter(({ id }) => id === face)
  const { unit, leftOut } = unitFileOf({ ...folded, unit: { ...folded.unit, faces } })
  // A face that has no hole yet has nothing to be computed with: nothing of it is gone.
  return { unit, leftOut: leftOut.filter(({ code }) => code !== 'no-holes') }
}
