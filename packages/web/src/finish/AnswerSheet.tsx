/** What was found to be behind a complaint, where, and what was done: without it a unit that came back is not released again. */
import { comeBackAnswered, type FoldedUnit } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Choice } from '../parts/Choice.tsx'
import { TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useFirstField } from '../parts/useFirstField.ts'
import { useTyped } from '../parts/useTyped.ts'
import { lines } from '../units/texts.ts'
import { words } from '../words/finish.ts'
import type { ComeBack } from './comeBack.ts'

type Props = { folded: FoldedUnit; back: ComeBack; onClose: () => void }

/** No face has this id: ids do not begin with a space. */
const NO_FACE = ' none'

export function AnswerSheet({ folded, back, onClose }: Props) {
  const { write } = useApp()
  const { typed, type, clear } = useTyped(`answer ${back.event}`, { found: '', done: '', face: NO_FACE })
  const [missing, setMissing] = useState(false)
  const [busy, setBusy] = useState(false)
  const form = useFirstField()
  const found = lines(typed.found)
  const { faces } = folded.unit
  const face = faces.find(({ id }) => id === typed.face)?.id

  async function keep() {
    if (found === undefined) return setMissing(true)
    const done = lines(typed.done)
    const answer = comeBackAnswered({
      cameBack: back.event,
      found,
      ...(done === undefined ? {} : { done }),
      ...(face === undefined ? {} : { face }),
    })
    setBusy(true)
    const written = await write(folded.id, [answer], words.isAnswered)
    setBusy(false)
    if (written === null) return
    clear()
    onClose()
  }

  return (
    <Sheet title={words.answerTitle} onClose={onClose}>
      <Form formRef={form} onKeep={keep}>
        <p class="finish__asked" dir="auto">
          {back.complaint}
        </p>
        <TextField
          label={words.found}
          hint={words.foundHint}
          long
          value={typed.found}
          onInput={(text) => type({ found: text })}
          fault={missing && found === undefined ? words.foundNeeded : ''}
        />
        {faces.length > 0 && (
          <Choice
            label={words.foundAt}
            options={[
              { value: NO_FACE, words: words.foundNowhere },
              ...faces.map(({ id, name }) => ({ value: id, words: name ?? id })),
            ]}
            value={face ?? NO_FACE}
            onChoose={(at) => type({ face: at })}
          />
        )}
        <TextField label={words.doneAbout} long value={typed.done} onInput={(text) => type({ done: text })} />
        <button type="submit" class="button button--act" disabled={busy}>
          {words.answerKeep}
        </button>
      </Form>
    </Sheet>
  )
}
