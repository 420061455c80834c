/** What the manual says of a hole or what was seen: thread, how it ends, what its bolt must have, torque. Readings are taken elsewhere. */
import { type Face, type Hole, type Quantity, readThread, writeQuantity } from '@gripbook/engine'
import { holeDescribed } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Choice } from '../parts/Choice.tsx'
import { QuantityField, TextField, typedLength, typedTorque } from '../parts/Field.tsx'
import { changesOf } from '../unit/changes.ts'
import { sayFault, words } from '../words/index.ts'

type Props = { unitId: string; face: Face; hole: Hole; onDone: () => void }
type Body = Parameters<typeof holeDescribed>[0]

/** A tick as a text, like all that the form shows. */
const YES = 'yes'

const shownQuantity = (value: Quantity | undefined, of: 'length' | 'torque') =>
  value === undefined ? '' : writeQuantity(value, of)

export function HoleForm({ unitId, face, hole, onDone }: Props) {
  const { write, settings } = useApp()
  const shown = textsOf(hole)
  const [typed, setTyped] = useState(shown)
  const put = (change: Partial<typeof shown>) => setTyped((before) => ({ ...before, ...change }))

  const threads = parts(typed.thread)
  const badThread = threads.map((name) => readThread(name)).find((read) => !read.ok)
  const threadFault =
    badThread && !badThread.ok ? sayFault(badThread.faults[0]) : threads.length === 0 ? words.face.thread : ''
  const torque = typedTorque(typed.torque, settings.torque)
  const least = typedLength(typed.minimumEngagement, settings.length)
  const visit = typed.visit.trim() === '' ? undefined : Number(typed.visit)
  const visitFault = visit !== undefined && !(Number.isInteger(visit) && visit >= 1) ? words.face.wholeNumber : ''

  async function keep() {
    if (threadFault !== '' || torque.state === 'fault' || least.state === 'fault' || visitFault !== '') return
    const needs = parts(typed.needs)
    const { fields, unknown } = changesOf(shown, typed, {
      thread: threads.length === 1 ? threads[0] : threads,
      ending: typed.ending,
      needs: needs.length === 0 ? undefined : needs,
      torque: torque.state === 'read' ? torque.value : undefined,
      minimumEngagement: least.state === 'read' ? least.value : undefined,
      visit,
      locates: typed.locates === YES,
    })
    if (Object.keys(fields).length + unknown.length === 0) return onDone()
    const body = { face: face.id, hole: hole.id, ...fields, ...(unknown.length > 0 ? { unknown } : {}) } as Body
    if ((await write(unitId, [holeDescribed(body)], words.face.describeKept(hole.id))) !== null) onDone()
  }

  return (
    <form
      class="card stack"
      onSubmit={(event) => {
        event.preventDefault()
        void keep()
      }}
    >
      <TextField
        label={words.face.thread}
        value={typed.thread}
        onInput={(thread) => put({ thread })}
        fault={threadFault}
      />
      <Choice
        label={words.face.ending}
        options={[
          { value: 'blind', words: words.face.endings.blind },
          { value: 'through', words: words.face.endings.through },
        ]}
        value={typed.ending}
        onChoose={(ending) => put({ ending })}
      />
      <TextField
        label={words.face.needs}
        value={typed.needs}
        onInput={(needs) => put({ needs })}
        hint={words.face.needsHint}
      />
      <div class="row">
        <QuantityField
          label={words.face.torque}
          unit={settings.torque}
          value={typed.torque}
          typed={torque}
          onInput={(text) => put({ torque: text })}
          hint={words.face.torqueHint(shownQuantity(face.torque, 'torque'))}
        />
        <QuantityField
          label={words.face.leastEngagement}
          unit={settings.length}
          value={typed.minimumEngagement}
          typed={least}
          onInput={(minimumEngagement) => put({ minimumEngagement })}
        />
        <TextField
          label={words.face.visit}
          value={typed.visit}
          onInput={(text) => put({ visit: text })}
          fault={visitFault}
          input={{ inputMode: 'numeric' }}
        />
      </div>
      <label class="tick">
        <input
          type="checkbox"
          checked={typed.locates === YES}
          onChange={(event) => put({ locates: event.currentTarget.checked ? YES : '' })}
        />
        {words.face.locates}
      </label>
      <div class="buttons buttons--even">
        <button type="button" class="button" onClick={onDone}>
          {words.shell.cancel}
        </button>
        <button type="submit" class="button button--act">
          {words.shell.keep}
        </button>
      </div>
    </form>
  )
}

function textsOf(hole: Hole) {
  return {
    thread: [hole.thread].flat().join(', '),
    ending: hole.ending ?? 'blind',
    needs: (hole.needs ?? []).join(', '),
    torque: shownQuantity(hole.torque, 'torque'),
    minimumEngagement: shownQuantity(hole.minimumEngagement, 'length'),
    visit: hole.visit === undefined ? '' : String(hole.visit),
    locates: hole.locates === true ? YES : '',
  }
}

/** The parts of a list typed with commas. */
function parts(text: string): string[] {
  return text
    .split(/[,;،、]/)
    .map((part) => part.trim())
    .filter((part) => part !== '')
}
