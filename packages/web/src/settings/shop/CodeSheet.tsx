/** A code for somebody new or for a further device: shown as letters and as a picture for a camera. */
import { useEffect, useId, useState } from 'preact/hooks'
import { useApp } from '../../app/context.ts'
import { type Role, type ShopCode, type ShopPerson, shop } from '../../device/shop.ts'
import { Choice } from '../../parts/Choice.tsx'
import { TextField } from '../../parts/Field.tsx'
import { Sheet } from '../../parts/Sheet.tsx'
import { words } from '../../words/index.ts'
import { countdown } from '../figures.ts'
import { useFaultFocus } from '../useFaultFocus.ts'
import { RoleChoice } from './RoleChoice.tsx'
import './CodeSheet.css'

type Made = ShopCode & { name: string }

export function CodeSheet({ people, onClose }: { people: readonly ShopPerson[]; onClose: () => void }) {
  const [made, setMade] = useState<Made | null>(null)
  return (
    <Sheet title={made === null ? words.settings.newCode : words.settings.codeTitle(made.name)} onClose={onClose}>
      {made === null ? (
        <ForWhom people={people.filter(({ left }) => left === null)} onMade={setMade} />
      ) : (
        <ShownCode made={made} onAnother={() => setMade(null)} />
      )}
    </Sheet>
  )
}

function ForWhom({ people, onMade }: { people: readonly ShopPerson[]; onMade: (made: Made) => void }) {
  const id = useId()
  const [whom, setWhom] = useState<'new' | 'known'>('new')
  const [name, setName] = useState('')
  const [role, setRole] = useState<Role>('builder')
  const [person, setPerson] = useState(people[0]?.id ?? '')
  const [fault, setFault] = useState<{ at: 'name' | 'form'; words: string } | null>(null)
  const [busy, setBusy] = useState(false)
  const form = useFaultFocus(fault)

  async function make() {
    if (whom === 'new' && name.trim() === '') {
      setFault({ at: 'name', words: words.settings.nameMissing })
      return
    }
    setFault(null)
    setBusy(true)
    const answer = await shop.makeCode(whom === 'new' ? { name: name.trim(), role } : { person })
    setBusy(false)
    if (answer.ok) {
      const known = people.find((one) => one.id === person)
      onMade({ ...answer.value, name: whom === 'new' ? name.trim() : (known?.name ?? '') })
    } else
      setFault({
        at: answer.code === 'wrong-request' && whom === 'new' ? 'name' : 'form',
        words: words.settings.refused(answer.code),
      })
  }

  return (
    <form
      ref={form}
      class="stack"
      noValidate
      aria-busy={busy}
      onSubmit={(event) => {
        event.preventDefault()
        if (!busy) void make()
      }}
    >
      {people.length > 0 && (
        <Choice
          label={words.settings.codeFor}
          options={[
            { value: 'new', words: words.settings.forNew },
            { value: 'known', words: words.settings.forKnown },
          ]}
          value={whom}
          onChoose={setWhom}
        />
      )}
      {whom === 'new' ? (
        <>
          <TextField
            label={words.settings.newName}
            value={name}
            fault={fault?.at === 'name' ? fault.words : ''}
            input={{ maxLength: 80 }}
            onInput={setName}
          />
          <RoleChoice value={role} onChoose={setRole} />
        </>
      ) : (
        <div class="field">
          <label class="field__label" for={id}>
            {words.settings.whom}
          </label>
          <select id={id} class="input" value={person} onChange={(event) => setPerson(event.currentTarget.value)}>
            {people.map((one) => (
              <option key={one.id} value={one.id}>
                {words.settings.person(one.name, one.role)}
              </option>
            ))}
          </select>
        </div>
      )}
      <p class="field__fault" role="alert">
        {fault?.at === 'form' ? fault.words : ''}
      </p>
      <button type="submit" class="button button--act button--wide" disabled={busy}>
        {busy ? words.settings.makingCode : words.settings.makeCode}
      </button>
    </form>
  )
}

function ShownCode({ made: { code, expires, link, qr }, onAnother }: { made: Made; onAnother: () => void }) {
  const { book, say } = useApp()
  const left = useTimeLeft(Date.parse(expires) + (book.status?.clock?.offBy ?? 0))

  async function copy() {
    try {
      await navigator.clipboard.writeText(link)
      say({ words: words.settings.copied, tone: 'done' })
    } catch {
      say({ words: words.settings.notCopied, tone: 'fault' })
    }
  }

  if (left <= 0)
    return (
      <>
        <p role="alert">{words.settings.codeVoid}</p>
        <button type="button" class="button button--act button--wide" onClick={onAnother}>
          {words.settings.makeCode}
        </button>
      </>
    )
  return (
    <>
      <p>{words.settings.codeHow}</p>
      <div class="code">
        <img class="code__picture" src={`data:image/svg+xml,${encodeURIComponent(qr)}`} alt={words.settings.qrLabel} />
        <p class="code__letters">{code}</p>
        <p role="timer">{words.settings.codeLeft(countdown(left))}</p>
      </div>
      <p class="code__link">{link}</p>
      {'clipboard' in navigator && (
        <button type="button" class="button" onClick={() => void copy()}>
          {words.settings.copyLink}
        </button>
      )}
    </>
  )
}

/** Ms until then by this device's clock, told each second. */
function useTimeLeft(until: number): number {
  const [now, setNow] = useState(() => Date.now())
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 1000)
    return () => clearInterval(timer)
  }, [])
  return until - now
}
