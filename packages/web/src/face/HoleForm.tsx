/** What the manual says of a hole or what was seen: thread, how it ends, what its bolt must have, torque. Readings are taken elsewhere. */
import { type Face, type Hole, type Quantity, readThread, writeQuantity } from '@gripbook/engine'
import { holeDescribed } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Choice } from '../parts/Choice.tsx'
import { QuantityField, TextField, typedLength, typedTorque } from '../parts/Field.tsx'
import { sayFault, words } from '../words/index.ts'

type Props = { unitId: string; face: Face; hole: Hole; onDone: () => void }
type Body = Parameters<typeof holeDescribed>[0]

const shownQuantity = (value: Quantity | undefined, of: 'length' | 'torque') =>
  value === undefined ? '' : writeQuantity(value, of)

export function HoleForm({ unitId, face, hole, onDone }: Props) {
  const { write, settings } = useApp()
  const [thread, setThread] = useState([hole.thread].flat().join(', '))
  const [ending, setEnding] = useState(hole.ending ?? 'blind')
  const [needs, setNeeds] = useState((hole.needs ?? []).join(', '))
  const [torque, setTorque] = useState(shownQuantity(hole.torque, 'torque'))
  const [least, setLeast] = useState(shownQuantity(hole.minimumEngagement, 'length'))
  const [visit, setVisit] = useState(hole.visit === undefined ? '' : String(hole.visit))
  const [locates, setLocates] = useState(hole.locates ?? false)

  const threads = parts(thread)
  const badThread = threads.map((name) => readThread(name)).find((read) => !read.ok)
  const threadFault =
    badThread && !badThread.ok ? sayFault(badThread.faults[0]) : threads.length === 0 ? words.face.thread : ''
  const typedT = typedTorque(torque, settings.torque)
  const typedE = typedLength(least, settings.length)
  const visitNumber = visit.trim() === '' ? undefined : Number(visit)
  const visitFault =
    visitNumber !== undefined && !(Number.isInteger(visitNumber) && visitNumber >= 1) ? words.face.whole_ : ''

  async function keep() {
    if (threadFault !== '' || typedT.state === 'fault' || typedE.state === 'fault' || visitFault !== '') return
    const now: Partial<Record<keyof Hole, unknown>> = {
      thread: threads.length === 1 ? threads[0] : threads,
      ending,
      needs: parts(needs).length === 0 ? undefined : parts(needs),
      torque: typedT.state === 'read' ? typedT.value : undefined,
      minimumEngagement: typedE.state === 'read' ? typedE.value : undefined,
      visit: visitNumber,
      locates: locates || (hole.locates === undefined ? undefined : false),
    }
    const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b)
    const names = (Object.keys(now) as (keyof Hole)[]).filter((name) => {
      const before = name === 'ending' ? (hole.ending ?? 'blind') : hole[name]
      return !same(now[name], before)
    })
    const cleared = names.filter((name) => now[name] === undefined)
    if (names.length === 0) return onDone()
    const body = {
      face: face.id,
      hole: hole.id,
      ...Object.fromEntries(names.filter((name) => now[name] !== undefined).map((name) => [name, now[name]])),
      ...(cleared.length > 0 ? { unknown: cleared } : {}),
    } as Body
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
      <TextField label={words.face.thread} value={thread} onInput={setThread} fault={threadFault} />
      <Choice
        label={words.face.ending}
        options={[
          { value: 'blind', words: words.face.endings.blind },
          { value: 'through', words: words.face.endings.through },
        ]}
        value={ending}
        onChoose={setEnding}
      />
      <TextField label={words.face.needs} value={needs} onInput={setNeeds} hint={words.face.needsHint} />
      <div class="row">
        <QuantityField
          label={words.face.torque}
          unit={settings.torque}
          value={torque}
          typed={typedT}
          onInput={setTorque}
          hint={words.face.torqueHint(shownQuantity(face.torque, 'torque'))}
        />
        <QuantityField
          label={words.face.quantities.minimumEngagement!}
          unit={settings.length}
          value={least}
          typed={typedE}
          onInput={setLeast}
        />
        <TextField
          label={words.face.visit}
          value={visit}
          onInput={setVisit}
          fault={visitFault}
          input={{ inputMode: 'numeric' }}
        />
      </div>
      <label class="tick">
        <input type="checkbox" checked={locates} onChange={(event) => setLocates(event.currentTarget.checked)} />
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

/** The parts of a list typed with commas. */
function parts(text: string): string[] {
  return text
    .split(/[,;،、]/)
    .map((part) => part.trim())
    .filter((part) => part !== '')
}
