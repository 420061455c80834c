/** Taking a unit in: what it is, what is wrong with it, whether someone had it apart before, and how it looks from all sides. */
import { useEffect, useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Shell } from '../app/Shell.tsx'
import { Icon } from '../look/icons.tsx'
import { Caution } from '../parts/Caution.tsx'
import { Choice } from '../parts/Choice.tsx'
import { TextField } from '../parts/Field.tsx'
import { PhotographButtons } from '../parts/PhotographButtons.tsx'
import { Picture } from '../unit/Picture.tsx'
import { words } from '../words/index.ts'
import { Foot } from './Foot.tsx'
import { type Draft, HISTORIES, holdsSomething, type Sign, takeInHappenings } from './takeIn.ts'
import { oneLine } from './texts.ts'
import { useDraft } from './useDraft.ts'
import './TakeInPage.css'

/** Each opening of the form has a draft of its own. */
export function TakeInPage() {
  const [opening, setOpening] = useState(0)
  return <TakeInForm key={opening} onStartOver={() => setOpening((before) => before + 1)} />
}

function TakeInForm({ onStartOver }: { onStartOver: () => void }) {
  const { write, go, say } = useApp()
  const { draft, change, clear } = useDraft()
  const [missing, setMissing] = useState(false)
  const [busy, setBusy] = useState(false)
  const form = useRef<HTMLFormElement>(null)
  const toName = () => form.current?.querySelector('input')?.focus()
  useEffect(() => {
    // A keyboard that springs up over a form which is being read on a phone is in the way.
    if (matchMedia('(pointer: fine)').matches) toName()
  }, [])

  async function takeIn() {
    const named = oneLine(draft.name)
    setMissing(named === undefined)
    if (named === undefined) {
      toName()
      return
    }
    setBusy(true)
    const written = await write(
      draft.unit,
      takeInHappenings(draft, words.units.seePhotograph),
      words.units.takenIn(named),
    )
    setBusy(false)
    if (written === null) return
    clear()
    go({ at: 'unit', book: 'shop', unit: draft.unit })
  }

  return (
    <Shell title={words.units.takeInTitle}>
      <form
        ref={form}
        class="take-in"
        id="take-in"
        onSubmit={(event) => {
          event.preventDefault()
          void takeIn()
        }}
      >
        <section>
          <TextField
            label={words.units.name}
            hint={words.units.nameHint}
            value={draft.name}
            fault={missing && oneLine(draft.name) === undefined ? words.units.nameMissing : ''}
            onInput={(value) => change({ name: value })}
            input={{ maxLength: 300 }}
          />
          <div class="row">
            <TextField
              label={words.units.model}
              value={draft.model}
              onInput={(model) => change({ model })}
              input={{ maxLength: 300 }}
            />
            <TextField
              label={words.units.jobNumber}
              value={draft.job}
              onInput={(job) => change({ job })}
              input={{ maxLength: 100 }}
            />
          </div>
          <TextField
            label={words.units.complaint}
            long
            value={draft.complaint}
            onInput={(complaint) => change({ complaint })}
          />
          <Caution name="lifting a unit" words={words.units.cautionLift} seen={words.units.cautionSeen} />
          <Caution name="hot oil" words={words.units.cautionOil} seen={words.units.cautionSeen} />
        </section>
        <section>
          <Choice
            label={words.units.history}
            options={HISTORIES.map((value) => ({ value, words: words.units.histories[value] }))}
            value={draft.history}
            onChoose={(history) => change({ history })}
          />
          <Signs draft={draft} change={change} />
          <Photographs draft={draft} change={change} />
        </section>
      </form>
      <Foot>
        {holdsSomething(draft) && (
          <button
            type="button"
            class="button"
            onClick={() => {
              clear()
              say({ words: words.units.startedOver, tone: 'done' })
              onStartOver()
            }}
          >
            {words.units.startOver}
          </button>
        )}
        <button type="submit" form="take-in" class="button button--act" disabled={busy}>
          <Icon name="tick" />
          {words.units.takeInDo}
        </button>
      </Foot>
    </Shell>
  )
}

type Part = { draft: Draft; change: ReturnType<typeof useDraft>['change'] }

function Signs({ draft: { signs }, change }: Part) {
  const add = (sign: Sign) => change((now) => ({ signs: [...now.signs, sign], history: 'opened before' }))
  const put = (index: number, text: string) =>
    change({ signs: signs.map((sign, at) => (at === index ? { ...sign, text } : sign)) })
  return (
    <div class="stack stack--tight">
      <h2>{words.units.signs}</h2>
      <p class="quiet">{words.units.signsHint}</p>
      {signs.length > 0 && (
        <ul class="stack">
          {signs.map((sign, index) => (
            <li key={index} class="card take-in__sign">
              {sign.photograph !== null && (
                <Picture photograph={sign.photograph.photograph} alt={words.units.sign(index + 1)} />
              )}
              <TextField label={words.units.sign(index + 1)} value={sign.text} onInput={(text) => put(index, text)} />
              <Remove
                label={words.units.removeSign(index + 1)}
                onRemove={() => change({ signs: signs.filter((_, at) => at !== index) })}
              />
            </li>
          ))}
        </ul>
      )}
      <PhotographButtons take={words.units.signPhotograph} onKept={(photograph) => add({ text: '', photograph })} />
      <button type="button" class="button" onClick={() => add({ text: '', photograph: null })}>
        <Icon name="plus" />
        {words.units.addSign}
      </button>
    </div>
  )
}

function Photographs({ draft: { photographs }, change }: Part) {
  const { sides } = words.units
  const [chosen, setChosen] = useState<string | null>(null)
  const next = sides.find((side) => photographs.every(({ caption }) => caption !== side)) ?? ''
  const shows = chosen ?? next
  const put = (index: number, caption: string) =>
    change({ photographs: photographs.map((one, at) => (at === index ? { ...one, caption } : one)) })
  return (
    <div class="stack stack--tight">
      <h2>{words.units.photographs}</h2>
      <p class="quiet">{words.units.photographsHint}</p>
      {photographs.length > 0 && (
        <ul class="take-in__pictures">
          {photographs.map(({ photograph, caption }, index) => (
            <li key={photograph} class="take-in__picture">
              <Picture photograph={photograph} alt={words.units.photographNumber(index + 1, caption)} />
              <TextField
                label={words.units.caption(index + 1)}
                value={caption}
                onInput={(text) => put(index, text)}
                input={{ maxLength: 300 }}
              />
              <Remove
                label={words.units.removePhotograph(index + 1)}
                onRemove={() => change({ photographs: photographs.filter((_, at) => at !== index) })}
              />
            </li>
          ))}
        </ul>
      )}
      <Choice
        label={words.units.nextShows}
        options={[...sides, ''].map((value) => ({ value, words: value === '' ? words.units.otherSide : value }))}
        value={shows}
        onChoose={setChosen}
      />
      <PhotographButtons
        onKept={(kept) => {
          setChosen(null)
          change((now) =>
            now.photographs.some(({ photograph }) => photograph === kept.photograph)
              ? {}
              : { photographs: [...now.photographs, { ...kept, caption: shows }] },
          )
        }}
      />
    </div>
  )
}

function Remove({ label, onRemove }: { label: string; onRemove: () => void }) {
  return (
    <div>
      <button type="button" class="button button--plain" aria-label={label} onClick={onRemove}>
        <Icon name="cross" />
        {words.units.remove}
      </button>
    </div>
  )
}
