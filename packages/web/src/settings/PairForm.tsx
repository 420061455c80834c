/** A code of the owner's makes this device one of the shop's. What was typed stays until it has worked. */
import type { Person } from '@gripbook/device'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { faultWords } from '../app/faultWords.ts'
import { TextField } from '../parts/Field.tsx'
import { words } from '../words/index.ts'
import { codeLengthFault, idsBefore, pairFault } from './pairing.ts'
import { everyEntry } from './refusedHere.ts'
import { useFaultFocus } from './useFaultFocus.ts'

type Props = { code?: string; onPaired: (person: Person) => void }
type At = 'code' | 'name' | 'form'

export function PairForm({ code: given = '', onPaired }: Props) {
  const { book, settings, choose } = useApp()
  const [code, setCode] = useState(given)
  const [name, setName] = useState(settings.own?.name ?? '')
  const [fault, setFault] = useState<{ at: At; words: string } | null>(null)
  const [busy, setBusy] = useState(false)
  const form = useFaultFocus(fault)
  const at = (field: At) => (fault?.at === field ? fault.words : '')

  async function pair() {
    const wrong = codeLengthFault(code)
    if (wrong !== null) {
      const { found, wanted } = wrong
      const said = found === 0 ? words.settings.pairFault('code-missing') : words.settings.codeLength(found, wanted)
      setFault({ at: 'code', words: said })
      return
    }
    setBusy(true)
    setFault(null)
    try {
      const own = settings.own!
      const before = idsBefore(own.id, await everyEntry(book.device))
      const person = await book.device.pair(code, name.trim() || undefined, before)
      choose({ own: { ...own, name: person.name } })
      onPaired(person)
    } catch (error) {
      const known = pairFault(error)
      setFault(
        known === null
          ? { at: 'form', words: faultWords(error) }
          : { at: known.at, words: words.settings.pairFault(known.code) },
      )
    } finally {
      setBusy(false)
    }
  }

  return (
    <form
      ref={form}
      class="stack"
      noValidate
      aria-busy={busy}
      onSubmit={(event) => {
        event.preventDefault()
        if (!busy) void pair()
      }}
    >
      <p>{words.settings.pairWhat}</p>
      <TextField
        label={words.settings.pairCode}
        hint={words.settings.pairCodeHint}
        value={code}
        fault={at('code')}
        input={{ autocapitalize: 'characters', spellcheck: false, maxLength: 40 }}
        onInput={setCode}
      />
      <TextField
        label={words.settings.pairName}
        hint={words.settings.pairNameHint}
        value={name}
        fault={at('name')}
        input={{ autocomplete: 'name', maxLength: 80 }}
        onInput={setName}
      />
      <p class="field__fault" role="alert">
        {at('form')}
      </p>
      <button type="submit" class="button button--act button--wide" disabled={busy}>
        {busy ? words.settings.pairing : words.settings.pairDo}
      </button>
    </form>
  )
}
