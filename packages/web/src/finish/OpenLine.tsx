/** One thing that is open: what it is, and what settles it, on the spot or where it leads. */
import {
  clockStopped,
  type FoldedUnit,
  jobDone,
  type OpenWhy,
  partReplaced,
  partWentIn,
  partWrittenOff,
  plugPlaced,
  stepSigned,
} from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { type Part, partsOf } from '../unit/partForm.ts'
import { partNameIn } from '../unit/partName.ts'
import { Go } from '../units/Go.tsx'
import { given } from '../units/texts.ts'
import { words } from '../words/finish.ts'
import { AnswerSheet } from './AnswerSheet.tsx'
import { comeBacksOf } from './comeBack.ts'
import { type Line, placeOf } from './lines.ts'
import { ReasonSheet } from './ReasonSheet.tsx'
import { clockName, faceName, jobName, sayOpen } from './sayOpen.ts'
import { useTick } from './useTick.ts'
import { WaiveSheet } from './WaiveSheet.tsx'

type Props = { line: Line; folded: FoldedUnit }

export function OpenLine({ line, folded }: Props) {
  const { book } = useApp()
  const { why } = line
  if (why.code === 'part-out') return <PartLine part={why.part} folded={folded} />
  const to = placeOf(line, { book: book.name, unit: folded.id })
  const said = sayOpen(line, folded)
  if (to === null)
    return (
      <div class="open">
        <p class="open__words" dir="auto">
          {said}
        </p>
        <OnTheSpot why={why} folded={folded} />
      </div>
    )
  return (
    <div class="open">
      <Go to={to} class="open__link">
        <span class="open__words" dir="auto">
          {said}
          {why.code === 'stop-passed' && <span class="quiet open__more">{words.stopPassedWhat}</span>}
        </span>
        <Icon name="forth" size={20} />
      </Go>
      {'reading' in why && <WaiveButton unit={folded.id} reading={why.reading} />}
    </div>
  )
}

function WaiveButton({ unit, reading }: { unit: string; reading: string }) {
  const [open, setOpen] = useState(false)
  return (
    <>
      <button type="button" class="button" aria-label={words.waiveLabel(reading)} onClick={() => setOpen(true)}>
        {words.waive}
      </button>
      {open && <WaiveSheet unit={unit} reading={reading} onClose={() => setOpen(false)} />}
    </>
  )
}

function PartLine({ part: id, folded }: { part: string; folded: FoldedUnit }) {
  const { write } = useApp()
  const [open, setOpen] = useState<'replaced' | 'off' | null>(null)
  const part = partsOf(folded).find((one) => one.id === id)
  const name = partNameIn(folded, id)
  const about = part === undefined ? [] : partPlace(part, folded)
  const close = () => setOpen(null)
  return (
    <div class="open open--part">
      <div class="open__words">
        <p dir="auto">
          {part?.count !== undefined && part.count > 1 && `${words.times(part.count)} `}
          <strong>{name}</strong>
        </p>
        {about.length > 0 && (
          <p class="quiet" dir="auto">
            {about.join(' · ')}
          </p>
        )}
      </div>
      <div class="open__ways">
        <button
          type="button"
          class="button"
          aria-label={words.partInLabel(name)}
          onClick={() => void write(folded.id, [partWentIn({ part: id })], words.isIn(name))}
        >
          <Icon name="tick" size={20} />
          {words.partIn}
        </button>
        <button
          type="button"
          class="button"
          aria-label={words.partReplacedLabel(name)}
          onClick={() => setOpen('replaced')}
        >
          {words.partReplaced}
        </button>
        <button type="button" class="button" aria-label={words.partOffLabel(name)} onClick={() => setOpen('off')}>
          {words.partOff}
        </button>
      </div>
      {open === 'replaced' && (
        <ReasonSheet
          unit={folded.id}
          title={words.replacedTitle(name)}
          label={words.replacedBy}
          hint={words.replacedByHint}
          start={words.replacedByUsual}
          needed={words.replacedByHint}
          more={words.whyMaybe}
          act={words.replacedDo}
          onClose={close}
          onKeep={async (by, reason) =>
            (await write(
              folded.id,
              [partReplaced({ part: id, by, ...given('reason', reason) })],
              words.isReplaced(name),
            )) !== null
          }
        />
      )}
      {open === 'off' && (
        <ReasonSheet
          unit={folded.id}
          title={words.offTitle(name)}
          label={words.offWhy}
          needed={words.whyNeeded}
          act={words.offDo}
          onClose={close}
          onKeep={async (reason) =>
            (await write(folded.id, [partWrittenOff({ part: id, reason })], words.isOff(name))) !== null
          }
        />
      )}
    </div>
  )
}

/** What is settled with one tap, or two. */
function OnTheSpot({ why, folded }: { why: OpenWhy; folded: FoldedUnit }) {
  const { write } = useApp()
  const tickOff = useTick(folded)
  const [open, setOpen] = useState(false)
  if (why.code === 'job-not-done' || why.code === 'job-before-opening') {
    const name = jobName(why.job, folded)
    const done = () => tickOff(jobDone({ job: why.job, name }), words.jobDone(name))
    return <Way act={words.jobDo} label={`${name}: ${words.jobDo}`} onAct={done} />
  }
  if (why.code === 'clock-runs') {
    const stop = () => void write(folded.id, [clockStopped({ clock: why.clock })], words.clockStopped)
    return <Way act={words.clockStop} label={`${clockName(why.clock, folded)}: ${words.clockStop}`} onAct={stop} />
  }
  if (why.code === 'not-signed') {
    const sign = () => void write(folded.id, [stepSigned({ step: why.step, as: 'builder' })], words.signed)
    return <Way act={words.signBuilder} label={`${why.step}: ${words.signBuilder}`} onAct={sign} />
  }
  if (why.code === 'come-back-not-answered') {
    const back = comeBacksOf(folded).find(({ event }) => event === why.event)
    if (back === undefined) return null
    return (
      <>
        <Way act={words.answer} label={`${back.complaint}: ${words.answer}`} onAct={() => setOpen(true)} />
        {open && <AnswerSheet folded={folded} back={back} onClose={() => setOpen(false)} />}
      </>
    )
  }
  if (why.code !== 'plug-not-placed') return null
  const { plug } = why
  const found = folded.things.plug[plug]?.socket?.value
  return (
    <>
      <Way act={words.plugDo} label={`${plug}: ${words.plugDo}`} onAct={() => setOpen(true)} />
      {open && (
        <ReasonSheet
          unit={folded.id}
          title={words.plugTitle(plug)}
          label={words.plugSocket}
          needed={words.plugNeeded}
          start={typeof found === 'string' ? found : ''}
          act={words.plugDo}
          onClose={() => setOpen(false)}
          onKeep={async (socket) =>
            (await write(folded.id, [plugPlaced({ plug, socket })], words.plugIn(plug, socket))) !== null
          }
        />
      )}
    </>
  )
}

function Way({ act, label, onAct }: { act: string; label: string; onAct: () => void }) {
  return (
    <button type="button" class="button" aria-label={label} onClick={onAct}>
      {act}
    </button>
  )
}

function partPlace(part: Part, folded: FoldedUnit): string[] {
  return [
    ...(part.face === undefined ? [] : [faceName(part.face, folded)]),
    ...(part.hole === undefined ? [] : [words.atHole(part.hole)]),
    ...(part.place === undefined ? [] : [part.place]),
    ...(part.wayRound === undefined ? [] : [part.wayRound]),
  ]
}
