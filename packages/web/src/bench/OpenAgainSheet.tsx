/** A cover comes off again: its bolts are out, and start again by hand. */
import { faceOpened } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Caution } from '../parts/Caution.tsx'
import { TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useTyped } from '../parts/useTyped.ts'
import { oneLine } from '../units/texts.ts'
import { words } from '../words/bench.ts'
import type { Bench } from './useBench.ts'

export function OpenAgainSheet({ bench, onClose }: { bench: Bench; onClose: () => void }) {
  const { write } = useApp()
  const { folded, face } = bench
  const { typed, type, clear } = useTyped(`open again ${folded.id} ${face.id}`, { reason: '' })
  const [busy, setBusy] = useState(false)

  async function open() {
    const reason = oneLine(typed.reason)
    const holes = face.holes.map(({ id }) => id)
    setBusy(true)
    const written = await write(
      folded.id,
      [faceOpened({ face: face.id, holes, ...(reason === undefined ? {} : { reason }) })],
      words.isOpenAgain(holes.length),
    )
    setBusy(false)
    if (written === null) return
    clear()
    bench.look(null)
    onClose()
  }

  return (
    <Sheet title={words.openAgain} onClose={onClose}>
      <Form onKeep={open}>
        <p>{words.openAgainWhat(face.holes.length)}</p>
        <TextField
          label={words.openAgainWhy}
          value={typed.reason}
          onInput={(reason) => type({ reason })}
          input={{ maxLength: 300 }}
        />
        <Caution name="bench-loosen" words={words.cautionLoosen} seen={words.cautionSeen} />
        <button type="submit" class="button button--act button--wide dock__main" disabled={busy}>
          <Icon name="turns" />
          {words.openAgainDo(face.holes.length)}
        </button>
      </Form>
    </Sheet>
  )
}
