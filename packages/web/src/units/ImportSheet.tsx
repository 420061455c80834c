import { faultLines, happeningsOf } from '@gripbook/record'
import { useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { newId } from '../device/newId.ts'
import { Icon } from '../look/icons.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { words } from '../words/index.ts'
import { sizeOfUnit, unitFileFrom } from './readFile.ts'

type Chosen = { file: string; read: ReturnType<typeof unitFileFrom> }

/** A unit file that was handed on comes in as a new unit; one with faults changes nothing, and every fault is told with its place. */
export function ImportSheet({ onClose }: { onClose: () => void }) {
  const { write, go } = useApp()
  const input = useRef<HTMLInputElement>(null)
  const [busy, setBusy] = useState(false)
  const [chosen, setChosen] = useState<Chosen | null>(null)

  async function read(file: File | undefined) {
    if (file === undefined) return
    setBusy(true)
    setChosen({ file: file.name, read: unitFileFrom(new Uint8Array(await file.arrayBuffer())) })
    setBusy(false)
  }

  async function takeIn(value: Extract<Chosen['read'], { ok: true }>['value'], name: string) {
    setBusy(true)
    const unit = newId()
    const written = await write(unit, happeningsOf(value), words.units.imported(name))
    setBusy(false)
    if (written !== null) go({ at: 'unit', book: 'shop', unit })
  }

  return (
    <Sheet title={words.units.importTitle} onClose={onClose}>
      <p>{words.units.importWhat}</p>
      <button type="button" class="button" disabled={busy} onClick={() => input.current!.click()}>
        <Icon name="folder" />
        {busy ? words.units.importReading : words.units.importChoose}
      </button>
      <input
        ref={input}
        type="file"
        accept=".json,application/json"
        hidden
        data-testid="unit-file"
        onChange={(event) => {
          const { files } = event.currentTarget
          const file = files?.[0]
          event.currentTarget.value = ''
          void read(file)
        }}
      />
      <div role="status" class="stack">
        {chosen !== null && <Outcome chosen={chosen} busy={busy} onTakeIn={takeIn} />}
      </div>
    </Sheet>
  )
}

type OutcomeProps = {
  chosen: Chosen
  busy: boolean
  onTakeIn: (value: Extract<Chosen['read'], { ok: true }>['value'], name: string) => Promise<void>
}

function Outcome({ chosen: { file, read }, busy, onTakeIn }: OutcomeProps) {
  if (!read.ok)
    return (
      <>
        <p class="sign sign--cannot" dir="auto">
          <Icon name="warning" />
          {words.units.importFaults(file, read.faults.length)}
        </p>
        <ul class="faults">
          {faultLines(read.faults).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </>
    )
  const name = read.value.name ?? file
  const { faces, holes, kinds } = sizeOfUnit(read.value)
  return (
    <>
      <p dir="auto">{words.units.importHolds(name, faces, holes, kinds)}</p>
      <button type="button" class="button button--act" disabled={busy} onClick={() => void onTakeIn(read.value, name)}>
        {words.units.importDo}
      </button>
    </>
  )
}
