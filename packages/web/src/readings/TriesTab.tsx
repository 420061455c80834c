/** A bolt tried in a hole by hand: its turns until the head seats, or how far the head stands proud. */
import type { Face, FaceAnswer, Trial } from '@gripbook/engine'
import { writeQuantity } from '@gripbook/engine'
import { boltTried, type FoldedUnit, undone } from '@gripbook/record'
import { useEffect, useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { useTypedFigure } from '../parts/useTypedFigure.ts'
import { sayFault, words } from '../words/index.ts'
import { turnsExpected } from './changed.ts'
import { instrumentFor, readingOf } from './entry.ts'
import { FigurePad, KeysSwitch } from './FigurePad.tsx'
import { InstrumentButton, InstrumentSheet } from './Instrument.tsx'
import { NoKinds } from './NoKinds.tsx'
import type { Lead } from './order.ts'
import { kindsOf, type Spot } from './quantities.ts'
import { Sketch } from './Sketch.tsx'
import { StatedList } from './StatedList.tsx'
import { Strip } from './Strip.tsx'
import { trialsOf } from './stated.ts'
import { againstExpected, readTurns, turnsText } from './turns.ts'

type How = 'turns' | 'proud'

type Props = {
  folded: FoldedUnit
  face: Face
  answer: FaceAnswer | null
  named: (kind: string) => string
  lead: Lead | null
  onTray: () => void
}

export function TriesTab({ folded, face, answer, named, lead, onTray }: Props) {
  const { settings, write } = useApp()
  const kinds = kindsOf(folded.unit, face)
  const tried = trialsOf(folded, face.id)
  const figure = useTypedFigure(
    `try ${folded.id} ${face.id}`,
    { text: '', hole: '', kind: '', how: 'turns' },
    (was) => face.holes.some(({ id }) => id === was.hole) && kinds.some((one) => one.kind.id === was.kind),
  )
  const { begun, text } = figure
  const [picked, setPicked] = useState<{ hole: string; kind: string | null }>(
    begun ?? (lead?.to === 'try' ? { hole: lead.hole, kind: lead.kind } : { hole: face.holes[0]!.id, kind: null }),
  )
  const [how, setHow] = useState<How>(begun?.how === 'proud' ? 'proud' : 'turns')
  const [fault, setFault] = useState('')
  const [told, setTold] = useState<{ line: string; against: string | null; event: string } | null>(null)
  const [choosing, setChoosing] = useState(false)
  const input = useRef<HTMLInputElement>(null)

  const { hole } = picked
  const kind = picked.kind ?? likeliest(face, answer, hole) ?? kinds[0]?.kind.id ?? ''
  useEffect(() => figure.turnTo({ hole, kind, how }), [hole, kind, how])

  if (kinds.length === 0) return <NoKinds onTray={onTray} />

  const expected = turnsExpected(answer, hole, kind)
  const saidExpected = expected?.map(turnsText).join('–')

  function trialOf(typed: string): Trial | null {
    if (how === 'turns') {
      const turns = readTurns(typed)
      if (turns === null) setFault(words.readings.notTurns(typed))
      return turns === null ? null : { hole, kind, turns }
    }
    const read = readingOf(typed, settings.length, instrumentFor('proud', settings))
    if (!read.ok) setFault(sayFault(read.fault))
    return read.ok ? { hole, kind, proud: read.taken.value } : null
  }

  async function keep(typed: string) {
    if (typed.trim() === '') return
    const trial = trialOf(typed)
    if (trial === null) return
    const event = (await write(folded.id, [boltTried({ face: face.id, trial })]))?.[0]
    if (event === undefined) return
    figure.setText('', {})
    setFault('')
    setTold({
      line: words.readings.tried(named(kind), hole, sayTrial(trial)),
      against: 'turns' in trial ? sayAgainst(trial.turns) : null,
      event: event.id,
    })
  }

  function sayAgainst(turns: number): string | null {
    const against = againstExpected(turns, expected)
    if (against === null) return null
    const say = against === 'fewer' ? words.readings.fewer : words.readings.moreTurns
    return say(turnsText(turns), saidExpected ?? '')
  }

  async function undoTold(event: string) {
    if ((await write(folded.id, [undone({ event })])) !== null) setTold(null)
  }

  return (
    <div class="station">
      <div class="station__around">
        <h2 class="station__label">{words.readings.tryHole}</h2>
        <Strip
          label={words.readings.tryHole}
          cells={face.holes.map(({ id }) => {
            const times = tried.filter(({ said }) => said.hole === id).length
            return { spot: { place: 'hole', id }, name: id, value: times === 0 ? null : `${times}×` }
          })}
          current={{ place: 'hole', id: hole }}
          onPick={({ id }: Spot) => {
            setPicked({ hole: id, kind: null })
            setTold(null)
            input.current?.focus({ preventScroll: true })
          }}
        />
        <Choice
          label={words.readings.tryKind}
          options={kinds.map(({ kind: { id } }) => ({ value: id, words: named(id) }))}
          value={kind}
          onChoose={(next) => setPicked({ hole, kind: next })}
        />
        <Choice
          label={words.readings.tryHow}
          options={[
            { value: 'turns', words: words.readings.tryTurns },
            { value: 'proud', words: words.readings.tryProud },
          ]}
          value={how}
          onChoose={(next) => {
            setHow(next)
            setFault('')
          }}
        />
        <p class="quiet">{words.readings.gentle}</p>
        <section class="stack stack--tight">
          <h2 class="station__label">{words.readings.tries}</h2>
          <StatedList
            unit={folded.id}
            none={words.readings.noTries}
            lines={tried.map(({ event, said }) => ({
              event,
              line: words.readings.tried(named(said.kind), said.hole, sayTrial(said)),
            }))}
          />
        </section>
        <div class="station__switch">
          <KeysSwitch />
        </div>
      </div>
      <section class="station__dock" aria-label={words.readings.tabs.tries}>
        <div class="station__now">
          {how === 'proud' && <Sketch of="proud" size={56} />}
          <div class="station__what">
            <p class="station__spot" dir="auto">
              {words.readings.tryThis(named(kind), hole)}
            </p>
            {how === 'turns' && (
              <p>
                {expected === null
                  ? words.readings.noExpect
                  : words.readings.expect(turnsText(expected[0]), turnsText(expected[1]))}
              </p>
            )}
          </div>
          {how === 'proud' && <InstrumentButton quantity="proud" onOpen={() => setChoosing(true)} />}
        </div>
        <div role="status" class="station__kept">
          {told !== null && tried.some(({ event }) => event === told.event) && (
            <div class={`kept${told.against === null ? '' : ' kept--doubted'}`}>
              <Icon name={told.against === null ? 'tick' : 'warning'} />
              <div class="kept__words">
                <p dir="auto">{told.line}</p>
                {told.against !== null && <p class="kept__strong">{told.against}</p>}
              </div>
              <div class="kept__ways">
                <button type="button" class="button button--undo" onClick={() => void undoTold(told.event)}>
                  <Icon name="undo" />
                  {words.shell.undo}
                </button>
              </div>
            </div>
          )}
        </div>
        <FigurePad
          label={how === 'turns' ? words.readings.turnsField : words.readings.proudField}
          unit={how === 'turns' ? words.readings.turnsUnit : settings.length}
          text={text}
          fault={fault}
          onText={(typed) => {
            figure.setText(typed, { hole, kind, how })
            setFault('')
          }}
          onKeep={(typed) => void keep(typed)}
          inputRef={input}
        />
      </section>
      {choosing && <InstrumentSheet quantity="proud" onClose={() => setChoosing(false)} />}
    </div>
  )
}

/** The bolt that one would try first: what belongs there most likely, else what sat there. */
function likeliest(face: Face, answer: FaceAnswer | null, hole: string): string | undefined {
  const best = answer?.holes[hole]?.best
  if (best) return best
  const found = face.holes.find(({ id }) => id === hole)?.asFound
  return found === 'none' ? undefined : found
}

function sayTrial(trial: Trial): string {
  if ('turns' in trial) return words.readings.turns(turnsText(trial.turns))
  return 'proud' in trial
    ? words.readings.proud(writeQuantity(trial.proud))
    : words.readings.stickOut(writeQuantity(trial.stickOut))
}
