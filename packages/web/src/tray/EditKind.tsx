/** A kind put right, counted up or down with its reason, or struck out. */
import type { Unit } from '@gripbook/engine'
import {
  boltsAdded,
  boltsWrittenOff,
  type Happening,
  kindDescribed,
  kindStruckOut,
  readingTaken,
} from '@gripbook/record'
import { useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Choice } from '../parts/Choice.tsx'
import { TextField } from '../parts/Field.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { instrumentFor } from '../readings/entry.ts'
import { InstrumentSheet } from '../readings/Instrument.tsx'
import { words } from '../words/index.ts'
import { changesOf, type Draft, type DraftFault, draftOf, readDraft } from './draft.ts'
import { KindFields } from './KindFields.tsx'
import type { Laid } from './KindList.tsx'

type Props = { id: string; unit: Unit; face: string; laid: Laid; name: string; onClose: () => void }

export function EditKind({ id, unit, face, laid: { kind, shared }, name, onClose }: Props) {
  const { settings, write } = useApp()
  const where = { ...(shared ? {} : { face }), kind: kind.id }
  const [before] = useState(() => draftOf(kind, settings.length))
  const [draft, setDraft] = useState<Draft>(before)
  const [faults, setFaults] = useState<readonly DraftFault[]>([])
  const [picking, setPicking] = useState(false)
  const length = useRef<HTMLInputElement | null>(null)
  const count = useRef<HTMLInputElement | null>(null)

  async function done(happenings: Happening[], said: string) {
    if ((await write(id, happenings, said)) !== null) onClose()
  }

  async function keep() {
    const read = readDraft(draft, settings.length, instrumentFor('length', settings))
    if (!read.ok) return setFaults(read.faults)
    const { changes, unknown } = changesOf(before, draft, read.fields)
    const measured = read.taken !== null && (draft.length !== before.length || draft.how !== before.how)
    const described = Object.keys(changes).length > 0 || unknown.length > 0
    const happenings: Happening[] = [
      ...(described ? [kindDescribed({ ...where, ...changes, ...(unknown.length > 0 ? { unknown } : {}) })] : []),
      ...(measured ? [readingTaken({ of: { ...where, quantity: 'length' as const }, ...read.taken! })] : []),
    ]
    if (happenings.length === 0) return onClose()
    await done(happenings, words.tray.changed(name))
  }

  return (
    <Sheet title={words.tray.editTitle(name)} onClose={onClose}>
      <form
        class="stack kind-form"
        onSubmit={(event) => {
          event.preventDefault()
          void keep()
        }}
      >
        <KindFields
          unit={unit}
          draft={draft}
          faults={faults}
          onChange={(changed) => {
            setDraft((now) => ({ ...now, ...changed }))
            setFaults((now) => now.filter(({ field }) => !(field in changed)))
          }}
          onInstrument={() => setPicking(true)}
          lengthRef={length}
          countRef={count}
          name={name}
        />
        <div class="sheet-foot">
          <button type="submit" class="button button--act button--wide">
            {words.tray.keepChanges}
          </button>
        </div>
      </form>
      <ComeAndGo
        onAdded={(by, from) =>
          void done([boltsAdded({ ...where, count: by, ...(from === '' ? {} : { from }) })], words.tray.added(by, name))
        }
        onWrittenOff={(by, reason) =>
          void done([boltsWrittenOff({ ...where, count: by, reason })], words.tray.writtenOff(by, name))
        }
      />
      <button
        type="button"
        class="button button--stop"
        onClick={() => void done([kindStruckOut(where)], words.tray.struck(name))}
      >
        {words.tray.strike}
      </button>
      {picking && <InstrumentSheet quantity="length" onClose={() => setPicking(false)} />}
    </Sheet>
  )
}

type ComeAndGoProps = {
  onAdded: (count: number, from: string) => void
  onWrittenOff: (count: number, reason: string) => void
}

/** Bolts that come into the tray or leave it stand in the record with where from and why, unlike a count that is put right. */
function ComeAndGo({ onAdded, onWrittenOff }: ComeAndGoProps) {
  const [way, setWay] = useState<'added' | 'off' | null>(null)
  const [count, setCount] = useState('1')
  const [why, setWhy] = useState('')
  const [faults, setFaults] = useState<{ count?: string; why?: string }>({})

  function keep() {
    const number = /^\d{1,5}$/.test(count.trim()) ? Number(count) : 0
    const found = {
      ...(number > 0 ? {} : { count: words.tray.countNeeded }),
      ...(way === 'off' && why.trim() === '' ? { why: words.tray.reasonNeeded } : {}),
    }
    setFaults(found)
    if (Object.keys(found).length > 0) return
    if (way === 'added') onAdded(number, why.trim())
    else onWrittenOff(number, why.trim())
  }

  return (
    <form
      class="card stack"
      onSubmit={(event) => {
        event.preventDefault()
        keep()
      }}
    >
      <Choice
        label={words.tray.comeAndGo}
        options={[
          { value: 'added', words: words.tray.addBolts },
          { value: 'off', words: words.tray.writeOff },
        ]}
        value={way}
        onChoose={(next) => {
          setWay(next)
          setWhy('')
          setFaults({})
        }}
      />
      {way !== null && (
        <>
          <TextField
            label={words.tray.howMany}
            value={count}
            onInput={setCount}
            input={{ inputMode: 'numeric', maxLength: 5 }}
            {...(faults.count === undefined ? {} : { fault: faults.count })}
          />
          {way === 'off' && (
            <Choice
              label={words.tray.reason}
              options={words.tray.reasons.map((value) => ({ value, words: value }))}
              value={why}
              onChoose={setWhy}
            />
          )}
          <TextField
            label={way === 'off' ? words.tray.otherReason : words.tray.from}
            value={why}
            onInput={setWhy}
            input={{ maxLength: 300 }}
            {...(way === 'added' ? { hint: words.tray.fromHint } : {})}
            {...(faults.why === undefined ? {} : { fault: faults.why })}
          />
          <button type="submit" class="button button--act">
            {way === 'added' ? words.tray.addBolts : words.tray.writeOff}
          </button>
        </>
      )}
    </form>
  )
}
