import { useState } from 'preact/hooks'
import { useApp } from '../../app/context.ts'
import { type Role, type ShopPerson, shop } from '../../device/shop.ts'
import { Icon } from '../../look/icons.tsx'
import { TextField } from '../../parts/Field.tsx'
import { Form } from '../../parts/Form.tsx'
import { Sheet } from '../../parts/Sheet.tsx'
import { words } from '../../words/index.ts'
import { RoleChoice } from './RoleChoice.tsx'

type Props = { people: readonly ShopPerson[]; me: string; onChanged: () => void }

export function People({ people, me, onChanged }: Props) {
  const [open, setOpen] = useState<ShopPerson | null>(null)
  const here = people.filter(({ left }) => left === null)
  const gone = people.filter(({ left }) => left !== null)
  const list = (some: readonly ShopPerson[]) => (
    <ul class="lines">
      {some.map((person) => (
        <li key={person.id}>
          <button type="button" class="entry" onClick={() => setOpen(person)}>
            <span class="entry__words">
              <span class="entry__name" dir="auto">
                {person.name}
              </span>
              <span class="entry__more">{about(person, me)}</span>
            </span>
            <Icon name="more" />
          </button>
        </li>
      ))}
    </ul>
  )
  return (
    <>
      {list(here)}
      {gone.length > 0 && (
        <details class="settings__former">
          <summary>{words.settings.formerIds(gone.length)}</summary>
          {list(gone)}
        </details>
      )}
      {open !== null && (
        <PersonSheet
          person={open}
          onClose={() => setOpen(null)}
          onChanged={() => {
            setOpen(null)
            onChanged()
          }}
        />
      )}
    </>
  )
}

function about({ id, role, left }: ShopPerson, me: string): string {
  const parts = [words.settings.role(role)]
  if (id === me) parts.push(words.settings.you)
  if (left !== null)
    parts.push(
      words.settings.gone(new Intl.DateTimeFormat(undefined, { dateStyle: 'medium' }).format(Date.parse(left))),
    )
  return parts.join(' · ')
}

function PersonSheet({
  person,
  onClose,
  onChanged,
}: {
  person: ShopPerson
  onClose: () => void
  onChanged: () => void
}) {
  const { say } = useApp()
  const [name, setName] = useState(person.name)
  const [role, setRole] = useState<Role>(person.role)
  const [fault, setFault] = useState('')
  const [busy, setBusy] = useState(false)

  async function change(to: { name?: string; role?: Role; left?: boolean }, said: string) {
    setBusy(true)
    const answer = await shop.changePerson(person.id, to)
    setBusy(false)
    if (!answer.ok) {
      setFault(words.settings.refused(answer.code))
      return
    }
    say({ words: said, tone: 'done' })
    onChanged()
  }

  return (
    <Sheet title={words.settings.changePerson(person.name)} onClose={onClose}>
      <Form
        onKeep={() => {
          if (name.trim() === '') setFault(words.settings.nameMissing)
          else if (!busy) void change({ name: name.trim(), role }, words.settings.personChanged(name.trim()))
        }}
      >
        <TextField label={words.settings.newName} value={name} input={{ maxLength: 80 }} onInput={setName} />
        <RoleChoice value={role} onChoose={setRole} />
        <p class="field__fault" role="alert">
          {fault}
        </p>
        <button type="submit" class="button button--act button--wide" disabled={busy}>
          {words.shell.keep}
        </button>
      </Form>
      {person.left === null ? (
        <div class="stack stack--tight">
          <button
            type="button"
            class="button button--stop"
            disabled={busy}
            onClick={() => void change({ left: true }, words.settings.personLeft(person.name))}
          >
            {words.settings.hasLeft}
          </button>
          <p class="quiet">{words.settings.hasLeftWhat}</p>
        </div>
      ) : (
        <button
          type="button"
          class="button"
          disabled={busy}
          onClick={() => void change({ left: false }, words.settings.personChanged(person.name))}
        >
          {words.settings.isBack}
        </button>
      )}
    </Sheet>
  )
}
