/** One step fills the screen: where, which bolt, what the hands should feel, and one large action within the thumb's reach. */
import type { Face } from '@gripbook/engine'
import { boltBackedOut, type FoldedUnit, undone, workPaused } from '@gripbook/record'
import { useEffect, useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { faultWords } from '../app/faultWords.ts'
import type { BookName } from '../app/route.ts'
import { Icon } from '../look/icons.tsx'
import { turnsText } from '../readings/turns.ts'
import { sayIn } from '../unit/sayIn.ts'
import { useNames } from '../unit/useNames.ts'
import { words } from '../words/bench.ts'
import { sentence } from '../words/index.ts'
import { AngleSheet } from './AngleSheet.tsx'
import { AnotherSheet } from './AnotherSheet.tsx'
import { BindsSheet } from './BindsSheet.tsx'
import { ClockSheet } from './ClockSheet.tsx'
import { Clocks } from './Clocks.tsx'
import { Dock } from './Dock.tsx'
import { happeningsOf } from './doing.ts'
import type { General, Over } from './general.ts'
import { HolePicture } from './HolePicture.tsx'
import { lastTap, otherAt } from './left.ts'
import { MoreSheet } from './MoreSheet.tsx'
import { OpenAgainSheet } from './OpenAgainSheet.tsx'
import { Progress } from './Progress.tsx'
import { ResistanceStop } from './ResistanceStop.tsx'
import type { BenchStep } from './round.ts'
import { ShortSheet } from './ShortSheet.tsx'
import { StepsSheet } from './StepsSheet.tsx'
import { StepWords } from './StepWords.tsx'
import { StopSheet } from './StopSheet.tsx'
import { kindAloud, sayStep } from './spoken.ts'
import { figureIn, toolOf } from './torque.ts'
import { type Bench, useBench } from './useBench.ts'
import { useVoice } from './useVoice.ts'
import { useWakeLock } from './useWakeLock.ts'
import { WhySheet } from './WhySheet.tsx'
import { WrenchSheet } from './WrenchSheet.tsx'
import { RATCHET } from './wrenchHere.ts'

type Props = { folded: FoldedUnit; face: Face; book: BookName; tight: boolean }

export function AtBench({ folded, face, book, tight }: Props) {
  const { go, write, say, book: here, settings } = useApp()
  const bench = useBench(folded, face)
  const awake = useWakeLock()
  const nameOf = useNames()
  const [over, setOver] = useState<Over | null>(null)
  const { step, steps } = bench
  const work = folded.faces[face.id]
  const felt = Object.entries(work?.holes ?? {}).find(([, { resistance }]) => resistance !== undefined)?.[0] ?? null
  const stands = felt !== null && !bench.away
  const other = otherAt(folded, face.id, here.device.id, Date.now())
  useVoice(stands ? words.spoken.stopped(felt) : sayStep(step, sayingOf(bench, settings.torque)))

  const general: General = {
    undo() {
      bench.look(null)
      void bench
        .afterAll(async (kept) => {
          const tap = lastTap(kept, face.id, here.device.id)
          if (tap.length === 0) return say({ words: words.nothingToUndo, tone: 'done' })
          const done = await write(
            folded.id,
            tap.toReversed().map(({ id }) => undone({ event: id })),
          )
          if (done === null) return
          say({ words: words.isUndone(sentence(sayIn(folded)(tap.at(-1)!))), tone: 'done' })
        })
        .catch((error: unknown) => say({ words: faultWords(error), tone: 'fault' }))
    },
    binds() {
      if (step.hole !== null) setOver('binds')
    },
    look(by) {
      const to = steps[steps.indexOf(step) + by]
      if (to !== undefined) bench.look(to)
    },
    open: setOver,
    leave: () => go({ at: 'unit', book, unit: folded.id }),
  }

  const toFace = () => go({ at: 'face', book, unit: folded.id, face: face.id })

  async function pause() {
    const done = await write(folded.id, [
      workPaused({
        face: face.id,
        ...(step.hole === null ? {} : { hole: step.hole }),
        step: words.roundOf(step.round),
      }),
    ])
    if (done === null) return
    say({ words: words.paused, tone: 'done' })
    toFace()
  }

  const close = () => setOver(null)
  const { wrench } = bench.wrench
  const torques =
    !stands && step.round.what === 'pass' && step.done === null && wrench !== null && wrench.tells !== 'nothing'
  const shownHole = stands ? felt : step.hole
  const middle = useRef<HTMLDivElement>(null)
  const body = useRef<HTMLDivElement>(null)
  useEffect(() => {
    // Whatever was scrolled to: a new step, and another bolt in it, begins with its hole and its bolt.
    middle.current!.scrollTop = 0
    body.current!.scrollTop = 0
  }, [step.key, stands, bench.kind?.id])
  // Of the face as a whole: holes at which nothing is left to do.
  const open = new Set(steps.flatMap(({ hole, done }) => (done === null && hole !== null ? [hole] : [])))
  const done = new Set(
    step.hole === null
      ? face.holes.flatMap(({ id }) => (open.has(id) ? [] : [id]))
      : bench.mates.flatMap(({ hole, done }) => (done === null || hole === null ? [] : [hole])),
  )
  return (
    <div class={classOf(step.round.what, stands, tight)}>
      <div class="bench__top">
        {tight && (
          <button type="button" class="button bench__more" aria-label={words.back} onClick={toFace}>
            <Icon name="back" />
          </button>
        )}
        <Progress bench={bench} />
        <button type="button" class="button bench__more" onClick={() => setOver('more')}>
          <Icon name="list" />
          <span class="bench__more-words">{words.moreWays}</span>
        </button>
      </div>
      <Clocks folded={folded} />
      <div class="bench__middle" ref={middle}>
        <div class="bench__scene">
          <HolePicture face={face} work={work} hole={shownHole} done={done} />
        </div>
        <div class="bench__body" ref={body}>
          {other !== null && (
            <p class="bench__note">
              <Icon name="change" size={20} />
              <span dir="auto">{words.elsewhere(nameOf(other))}</span>
            </p>
          )}
          {bench.away && (
            <p class="bench__note">
              <Icon name="question" size={20} />
              {words.lookingAt}
            </p>
          )}
          {stands ? (
            <ResistanceStop bench={bench} hole={felt} general={general} />
          ) : (
            <StepWords bench={bench} tight={tight} onOpen={setOver} />
          )}
          {awake === 'cannot' && <p class="quiet">{words.notAwake}</p>}
        </div>
      </div>
      {!stands && <Dock key={step.key} bench={bench} general={general} finished={bench.next === null && !bench.away} />}

      {over === 'more' && (
        <MoreSheet
          torque={torques}
          begun={steps.some(({ started, done }) => started || done !== null)}
          awake={awake}
          tight={tight}
          onFeel={
            torques && tight
              ? () => {
                  close()
                  void bench.act(happeningsOf(face.id, step, { tool: toolOf(RATCHET, null) }))
                }
              : null
          }
          onOpen={setOver}
          onPause={() => void pause()}
          onClose={close}
        />
      )}
      {over === 'steps' && (
        <StepsSheet
          steps={steps}
          now={step}
          onStep={(to) => {
            bench.look(to)
            close()
          }}
          onClose={close}
        />
      )}
      {over === 'wrench' && <WrenchSheet bench={bench} onClose={close} />}
      {over === 'clock' && <ClockSheet folded={folded} face={face.id} onClose={close} />}
      {over === 'binds' && step.hole !== null && <BindsSheet bench={bench} hole={step.hole} onClose={close} />}
      {over === 'angle' && <AngleSheet bench={bench} onClose={close} />}
      {over === 'open again' && <OpenAgainSheet bench={bench} onClose={close} />}
      {over === 'why' && <WhySheet bench={bench} onClose={close} />}
      {over === 'another' && (
        <AnotherSheet
          bench={bench}
          onOut={async (hole, reason) => {
            const written = await write(
              folded.id,
              [boltBackedOut({ face: face.id, hole, reason })],
              words.backedOut([hole]),
            )
            if (written !== null) close()
          }}
          onClose={close}
        />
      )}
      {over === 'short' && <ShortSheet bench={bench} onClose={close} />}
      {bench.held !== null && <StopSheet bench={bench} held={bench.held} onWrench={() => setOver('wrench')} />}
    </div>
  )
}

function classOf(what: BenchStep['round']['what'], stands: boolean, tight: boolean): string {
  const kind = stands ? ' bench--stopped' : what === 'pass' ? ' bench--pass' : ''
  return `bench${kind}${tight ? ' bench--tight' : ''}`
}

function sayingOf({ kind, named, pair, wanted }: Bench, unit: Parameters<typeof figureIn>[1]) {
  const turns = pair?.turns
  return {
    kind: kind === null ? null : kindAloud(kind, named(kind.id)),
    turns: turns === undefined ? null : turnsText((turns[0] + turns[1]) / 2),
    torque: wanted === null ? null : { figure: figureIn(wanted, unit), unit },
  }
}
