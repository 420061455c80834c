import { DeviceFault } from '@gripbook/device'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { faultWords } from '../app/faultWords.ts'
import { deviceLabel } from '../device/books.ts'
import { newId } from '../device/newId.ts'
import { Icon } from '../look/icons.tsx'
import { TextField } from '../parts/Field.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { words } from '../words/index.ts'
import { PairForm } from './PairForm.tsx'
import { StorageLines } from './StorageLines.tsx'
import './facts.css'

/** Enough of an id to tell two devices apart in a list. */
const SHORT = 8

export function ThisDevice() {
  const { book, settings, choose, say } = useApp()
  const [open, setOpen] = useState<'pair' | 'sign out' | null>(null)
  const { status } = book
  const person = status?.person ?? null
  const close = () => setOpen(null)
  return (
    <section class="card settings__part">
      <h2>{words.settings.thisDevice}</h2>
      <dl class="facts">
        <div>
          <dt>{words.settings.deviceKind}</dt>
          <dd>{deviceLabel()}</dd>
        </div>
        <div>
          <dt>{words.settings.deviceIdLabel}</dt>
          <dd>{words.settings.deviceId(book.device.id.slice(0, SHORT))}</dd>
        </div>
        <div>
          <dt>{words.settings.pairedAs}</dt>
          <dd dir="auto">
            {person !== null
              ? words.settings.person(person.name, person.role)
              : status?.signedIn === 'no'
                ? words.settings.notPaired
                : words.settings.notKnown}
          </dd>
        </div>
      </dl>
      {person === null ? (
        <>
          <TextField
            label={words.settings.ownName}
            value={settings.own!.name}
            input={{ autocomplete: 'name', maxLength: 80 }}
            onInput={(name) => choose({ own: { ...settings.own!, name } })}
          />
          <button type="button" class="button button--act" onClick={() => setOpen('pair')}>
            {words.settings.pairDo}
          </button>
        </>
      ) : (
        <button type="button" class="button" onClick={() => setOpen('sign out')}>
          {words.settings.signOut}
        </button>
      )}
      {status !== null && (
        <>
          <h3>{words.sending.storage}</h3>
          <StorageLines storage={status.storage} />
        </>
      )}
      {open === 'pair' && (
        <Sheet title={words.settings.pairTitle} onClose={close}>
          <PairForm
            onPaired={(paired) => {
              close()
              say({ words: words.settings.paired(paired.name), tone: 'done' })
            }}
          />
        </Sheet>
      )}
      {open === 'sign out' && <SignOutSheet onClose={close} />}
    </section>
  )
}

function SignOutSheet({ onClose }: { onClose: () => void }) {
  const { book, choose, say } = useApp()
  const [fault, setFault] = useState('')
  const waiting = (book.status?.waiting.entries ?? 0) + (book.status?.waiting.photographs ?? 0)

  async function signOut() {
    try {
      await book.device.signOut()
      // Who writes here next is somebody whom the shop does not know yet: not the one who has just gone.
      choose({ own: { id: newId(), name: '' } })
      onClose()
      say({ words: words.settings.signedOut, tone: 'done' })
    } catch (error) {
      const away = error instanceof DeviceFault && error.code === 'no-answer'
      setFault(away ? words.settings.signOutAway : faultWords(error))
    }
  }

  return (
    <Sheet title={words.settings.signOutTitle} onClose={onClose}>
      <p>{words.settings.signOutStays}</p>
      {waiting > 0 && (
        <p class="caution">
          <Icon name="waiting" />
          <span>{words.settings.signOutWaits(waiting)}</span>
        </p>
      )}
      <p>{words.settings.signOutAfter}</p>
      <p class="field__fault" role="alert">
        {fault}
      </p>
      <div class="buttons buttons--even">
        <button type="button" class="button" onClick={onClose}>
          {words.shell.cancel}
        </button>
        <button type="button" class="button button--act" onClick={() => void signOut()}>
          {words.settings.signOut}
        </button>
      </div>
    </Sheet>
  )
}
