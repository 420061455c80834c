/** How far what was entered has come, and what stands in the way. */
import { refusalWords, type Status } from '@gripbook/device'
import { useEffect, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { faultWords } from '../app/faultWords.ts'
import { SIGN_OF, sendingOf } from '../app/sending.ts'
import { Icon } from '../look/icons.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { words } from '../words/index.ts'
import { bytesWords, fromNow, spanWords } from './figures.ts'
import { PairForm } from './PairForm.tsx'
import { byReason, everyEntry, type RefusedHere } from './refusedHere.ts'
import { StorageLines } from './StorageLines.tsx'
import { troubleOf } from './trouble.ts'
import './facts.css'
import './SendingSheet.css'

export function SendingSheet({ onClose }: { onClose: () => void }) {
  const { book, say } = useApp()
  const { status } = book
  const sending = sendingOf(status)
  return (
    <Sheet title={words.sending.title} onClose={onClose}>
      <div class={`sending sending--${sending.replace(' ', '-')}`}>
        <Icon name={SIGN_OF[sending]} size={32} />
        <div>
          <p class="sending__lead">{words.sending.lead(sending)}</p>
          <p>{sending === 'full' ? words.sending.full : words.sending.nothingLost}</p>
        </div>
      </div>
      {status !== null && (
        <>
          <TroubleLine status={status} />
          <Facts status={status} />
          {status.refused.entries + status.refused.photographs > 0 && <Refused status={status} />}
          {status.replaces !== null && <Caution said={words.sending.replaced} />}
          {status.signedIn === 'no' && (
            <section class="stack stack--tight">
              <h3>{words.settings.pairTitle}</h3>
              <PairForm
                onPaired={(person) => {
                  say({ words: words.settings.paired(person.name), tone: 'done' })
                  onClose()
                }}
              />
            </section>
          )}
          <section class="stack stack--tight">
            <h3>{words.sending.storage}</h3>
            <StorageLines storage={status.storage} />
          </section>
        </>
      )}
    </Sheet>
  )
}

function TroubleLine({ status }: { status: Status }) {
  const trouble = troubleOf(status.trouble)
  // A device that was never paired has no trouble: that it is not paired is said below.
  if (trouble === null || (trouble === 'signed out' && status.person === null)) return null
  return <Caution said={typeof trouble === 'string' ? words.sending.trouble(trouble) : refusalWords(trouble)} />
}

function Caution({ said }: { said: string }) {
  return (
    <p class="caution">
      <Icon name="warning" />
      <span>{said}</span>
    </p>
  )
}

function Facts({ status: { waiting, contact, person, signedIn, clock } }: { status: Status }) {
  const now = useNow(30_000)
  const waits = [words.sending.waiting(waiting.entries, waiting.photographs)]
  if (waiting.bytes > 0) waits.push(words.sending.waitingBytes(bytesWords(waiting.bytes)))
  if (waiting.since !== null) waits.push(words.sending.waitingSince(fromNow(Date.parse(waiting.since), now)))
  return (
    <dl class="facts">
      <div>
        <dt>{words.sending.waits}</dt>
        <dd>{waits.join(', ')}</dd>
      </div>
      <div>
        <dt>{words.sending.contact}</dt>
        <dd>{contact === null ? words.sending.never : fromNow(Date.parse(contact), now)}</dd>
      </div>
      <div>
        <dt>{words.sending.signedIn}</dt>
        <dd dir="auto">
          {person !== null
            ? words.settings.person(person.name, person.role)
            : signedIn === 'unknown'
              ? words.settings.notKnown
              : words.settings.notPaired}
        </dd>
      </div>
      {clock?.wrong && (
        <div>
          <dt>{words.sending.clock}</dt>
          <dd>
            {clock.offBy > 0
              ? words.sending.clockAhead(spanWords(clock.offBy))
              : words.sending.clockBehind(spanWords(clock.offBy))}
          </dd>
        </div>
      )}
    </dl>
  )
}

function Refused({ status }: { status: Status }) {
  const { book, say } = useApp()
  const [found, setFound] = useState<RefusedHere[]>([])
  const { entries, photographs } = status.refused
  useEffect(() => {
    let left = false
    everyEntry(book.device).then(
      (all) => left || setFound(byReason(all)),
      () => {},
    )
    return () => {
      left = true
    }
  }, [book.device, entries])

  async function again() {
    try {
      for (const unit of await book.device.units()) await book.device.tryAgain(unit)
      say({ words: words.sending.triedAgain, tone: 'done' })
    } catch (error) {
      say({ words: faultWords(error), tone: 'fault' })
    }
  }

  return (
    <section class="stack stack--tight">
      <h3>{words.sending.refused}</h3>
      <ul class="stack stack--tight">
        {found.map(({ why, entries }) => (
          <li key={why}>{words.sending.refusedFor(entries, why)}</li>
        ))}
        {photographs > 0 && <li>{words.sending.refusedPhotographs(photographs)}</li>}
      </ul>
      <p class="quiet">{words.sending.refusedWhat}</p>
      <button type="button" class="button" onClick={() => void again()}>
        <Icon name="turns" />
        {words.sending.tryAgain}
      </button>
    </section>
  )
}

/** The time now, which goes on while it is looked at. */
function useNow(every: number): number {
  const [now, setNow] = useState(() => Date.now())
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), every)
    return () => clearInterval(timer)
  }, [every])
  return now
}
