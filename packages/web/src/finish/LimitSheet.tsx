import { type FoldedUnit, limitStated } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useTyped } from '../parts/useTyped.ts'
import { oneLine } from '../units/texts.ts'
import { words } from '../words/finish.ts'
import { figureOf, type Row } from './figures.ts'

type Props = { folded: FoldedUnit; row: Pick<Row, 'reading' | 'unit' | 'limit'>; onClose: () => void }

/** The manual's limit of a figure, with where it stands. */
export function LimitSheet({ folded, row, onClose }: Props) {
  const { write } = useApp()
  const unit = row.limit?.unit ?? row.unit
  const {
    typed,
    type: put,
    clear,
  } = useTyped(`limit ${folded.id} ${row.reading}`, {
    least: row.limit?.least === undefined ? '' : String(row.limit.least),
    most: row.limit?.most === undefined ? '' : String(row.limit.most),
    source: row.limit?.source ?? lastSource(folded),
  })
  const [tried, setTried] = useState(false)
  const least = figureOf(typed.least, unit)
  const most = figureOf(typed.most, unit)
  const source = oneLine(typed.source)
  const unread = (text: string, figure: typeof least) =>
    text.trim() !== '' && (figure === null || figure.unit !== unit) ? words.notFigure(text.trim()) : ''
  const faults = {
    least: unread(typed.least, least) || (least === null && most === null ? words.limitNeeded : ''),
    most:
      unread(typed.most, most) || (least !== null && most !== null && least.value > most.value ? words.crossed : ''),
    source: source === undefined ? words.sourceNeeded : '',
  }

  // Of a limit that is stated nothing half changed stays behind.
  function leave() {
    if (row.limit !== null) clear()
    onClose()
  }

  async function keep() {
    setTried(true)
    if (faults.least + faults.most + faults.source !== '' || source === undefined) return
    const body = {
      reading: row.reading,
      ...(least === null ? {} : { least: least.value }),
      ...(most === null ? {} : { most: most.value }),
      unit,
      source,
    }
    if ((await write(folded.id, [limitStated(body)], words.limitKept(row.reading))) === null) return
    clear()
    onClose()
  }

  return (
    <Sheet title={words.limitTitle(row.reading)} onClose={leave}>
      <Form onKeep={keep}>
        <div class="row">
          <TextField
            label={`${words.least}, ${unit}`}
            value={typed.least}
            fault={tried ? faults.least : ''}
            input={{ inputMode: 'decimal' }}
            onInput={(least) => put({ least })}
          />
          <TextField
            label={`${words.most}, ${unit}`}
            value={typed.most}
            fault={tried ? faults.most : ''}
            input={{ inputMode: 'decimal' }}
            onInput={(most) => put({ most })}
          />
        </div>
        <TextField
          label={words.source}
          hint={words.sourceHint}
          value={typed.source}
          fault={tried ? faults.source : ''}
          input={{ maxLength: 300 }}
          onInput={(source) => put({ source })}
        />
        <button type="submit" class="button button--act">
          {words.checkedDo}
        </button>
      </Form>
    </Sheet>
  )
}

/** Limits of one unit mostly stand in one manual. */
function lastSource({ entries }: FoldedUnit): string {
  const source = entries.findLast(({ type }) => type === 'limit-stated')?.body.source
  return typeof source === 'string' ? source : ''
}
