/** All that was entered about a unit, newest first, with who, when and how far it has come; each entry can be undone or brought back. */
import { refusalWords } from '@gripbook/device'
import { type FoldedUnit, undone } from '@gripbook/record'
import { useMemo, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Shell } from '../app/Shell.tsx'
import { useUnit } from '../app/useUnit.ts'
import { Icon, type IconName } from '../look/icons.tsx'
import { Field } from '../parts/Field.tsx'
import { place } from '../units/here.ts'
import { dayNumber, sayDay, sayTime, sayWhen } from '../units/when.ts'
import { words } from '../words/index.ts'
import { saidOf } from './clashes.ts'
import { NotHere } from './NotHere.tsx'
import { kindIn } from './sayClash.ts'
import { sayIn } from './sayIn.ts'
import { byDay, ofFace, type State, stateOf, storyOf, type Told } from './story.ts'
import { useNames } from './useNames.ts'
import { useStates } from './useStates.ts'
import './StoryPage.css'

/** Of a long story only so many are drawn at first, and so many more with each request. */
const SHOWN = 100

const SIGNS: Record<State, IconName | null> = {
  here: null,
  waiting: 'waiting',
  sent: 'sent',
  refused: 'warning',
  other: null,
}

export function StoryPage({ unit }: { unit: string }) {
  const folded = useUnit(unit)
  if (folded === null) return <p class="starting">{words.shell.opening}</p>
  if (folded.entries.length === 0) return <NotHere />
  return <OpenStory folded={folded} />
}

function OpenStory({ folded }: { folded: FoldedUnit }) {
  const [face, setFace] = useState('')
  const [count, setCount] = useState(SHOWN)
  const story = useMemo(() => storyOf(folded.entries, folded.undone), [folded])
  const chosen = useMemo(() => (face === '' ? story : ofFace(story, face)), [story, face])
  const days = useMemo(() => byDay(chosen.slice(0, count), (at) => dayNumber(Date.parse(at))), [chosen, count])
  const states = useStates(folded)
  const nameOf = useNames()
  const onTheWay = folded.missing.reduce((sum, { from, to }) => sum + to - from + 1, 0)
  return (
    <Shell title={words.story.title} over={folded.unit.name ?? words.unit.noName}>
      <div class="story">
        {folded.unit.faces.length > 0 && (
          <Field label={words.story.filter}>
            {({ id }) => (
              <select
                id={id}
                class="input"
                value={face}
                onChange={(event) => {
                  setFace(event.currentTarget.value)
                  setCount(SHOWN)
                }}
              >
                <option value="">{words.story.all}</option>
                {folded.unit.faces.map(({ id: one, name }) => (
                  <option key={one} value={one}>
                    {name ?? one}
                  </option>
                ))}
              </select>
            )}
          </Field>
        )}
        <p class="quiet" role="status">
          {chosen.length === 0 ? words.story.nothing : words.story.count(chosen.length)}
        </p>
        {onTheWay > 0 && <p class="quiet">{words.story.slow(onTheWay)}</p>}
        {days.map(({ day, told }) => (
          <section key={told[0]!.event.id}>
            <h2 class="story__day">{sayDay(day, place, 'full')}</h2>
            <ul class="lines">
              {told.map((one) => (
                <li key={one.event.id}>
                  <Entry told={one} folded={folded} here={states} nameOf={nameOf} />
                </li>
              ))}
            </ul>
          </section>
        ))}
        {chosen.length > count && (
          <button type="button" class="button" onClick={() => setCount(count + SHOWN)}>
            {words.story.earlier}
          </button>
        )}
      </div>
    </Shell>
  )
}

type EntryProps = {
  told: Told
  folded: FoldedUnit
  here: ReturnType<typeof useStates>
  nameOf: (who: string) => string
}

function Entry({ told, folded, here, nameOf }: EntryProps) {
  const { book, write } = useApp()
  const { event, undoneBy, about } = told
  const sentence = sentenceOf(told, folded)
  const entry = here.get(event.id)
  // Only what is paired sends; until then all of it is here, and the head of the page says so once.
  const sends = book.name === 'shop' && book.status?.signedIn !== 'no'
  const state = book.name === 'practice' ? null : stateOf(entry, sends)
  const takeBack = (id: string, said: string) => void write(folded.id, [undone({ event: id })], said)
  return (
    <div class="story__entry">
      <div class="story__words">
        <p class={`story__sentence${undoneBy === null ? '' : ' story__sentence--undone'}`} dir="auto">
          {sentence}
        </p>
        <p class="story__meta quiet" dir="auto">
          <span>
            {nameOf(event.who)}, {sayTime(event.at, place)}
          </span>
          {state !== null && state !== 'other' && <StateSign state={state} />}
        </p>
        {state === 'refused' && entry?.refusal !== undefined && (
          <p class="sign sign--cannot">{refusalWords(entry.refusal)}</p>
        )}
        {undoneBy !== null && (
          <p class="quiet" dir="auto">
            {words.story.undoneBy(nameOf(undoneBy.who), sayWhen(undoneBy.at, Date.now(), place))}
          </p>
        )}
      </div>
      {undoneBy !== null ? (
        <button
          type="button"
          class="button button--plain"
          aria-label={words.story.bringBackLabel(sentence)}
          onClick={() => takeBack(undoneBy.id, words.story.broughtBackDone)}
        >
          {words.story.bringBack}
        </button>
      ) : (
        about === null && (
          <button
            type="button"
            class="button button--plain"
            aria-label={words.story.undoLabel(sentence)}
            onClick={() => takeBack(event.id, words.story.undone)}
          >
            <Icon name="undo" />
            {words.story.undo}
          </button>
        )
      )}
    </div>
  )
}

function StateSign({ state }: { state: State }) {
  const icon = SIGNS[state]
  const tone = state === 'refused' ? ' sign--cannot' : state === 'waiting' ? ' sign--may' : ''
  return (
    <span class={`sign${tone}`}>
      {icon !== null && <Icon name={icon} size={16} />}
      {words.story.states[state]}
    </span>
  )
}

/** An undoing and a settling are told by what they are about, not by its number. */
function sentenceOf({ event, about }: Told, folded: FoldedUnit): string {
  const say = sayIn(folded)
  if (about !== null)
    return about.does === 'took back'
      ? words.story.tookBack(say(about.event))
      : words.story.broughtBack(say(about.event))
  if (event.type !== 'clash-settled') return say(event)
  const { stands: id, field, at } = event.body
  if (id === null) return words.story.settledNone
  const stands = folded.entries.find((entry) => entry.id === id)
  if (stands === undefined || typeof field !== 'string') return say(event)
  const value = stands.type === 'reading-taken' ? stands.body.value : stands.body[field]
  const said =
    value === undefined
      ? null
      : saidOf({ field }, value, kindIn({ place: Array.isArray(at) ? at.map(String) : [] }, folded))
  return said?.is === 'text' ? words.story.settledValue(say(stands), said.text) : words.story.settled(say(stands))
}
