import { type FoldedUnit, instrumentChecked } from '@gripbook/record'
import { useMemo, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { DateField, TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { place } from '../units/here.ts'
import { given, oneLine } from '../units/texts.ts'
import { sayDay } from '../units/when.ts'
import { words } from '../words/finish.ts'
import { instrumentsUsed, type Used } from './instruments.ts'

/** What the unit was measured and tightened with, and whether it was in calibration. */
export function InstrumentsUsed({ folded }: { folded: FoldedUnit }) {
  const used = useMemo(() => instrumentsUsed(folded), [folded])
  const [open, setOpen] = useState<Used | null>(null)
  return (
    <section class="card stack stack--tight">
      <h2>{words.instruments}</h2>
      {used.length === 0 && <p class="quiet">{words.noInstruments}</p>}
      <ul class="lines">
        {used.map((one) => (
          <li key={one.id} class="open">
            <span class="open__words">
              <span dir="auto">
                {one.name}
                {one.id !== one.name && ` · ${one.id}`}
              </span>
              <span class={`open__more sign quiet${one.out ? ' sign--cannot' : ''}`}>
                {one.out && <Icon name="warning" size={18} />}
                {one.until !== null && !one.out && <Icon name="tick" size={18} />}
                {one.until === null
                  ? words.noDate
                  : one.out
                    ? words.outOf(sayDay(one.until, place), sayDay(one.last, place))
                    : words.until(sayDay(one.until, place))}
              </span>
              {one.result !== null && (
                <span class="quiet open__more" dir="auto">
                  {one.result}
                </span>
              )}
            </span>
            <button type="button" class="button" aria-label={words.checkedLabel(one.name)} onClick={() => setOpen(one)}>
              {words.checked}
            </button>
          </li>
        ))}
      </ul>
      {open !== null && <CheckSheet used={open} unit={folded.id} onClose={() => setOpen(null)} />}
    </section>
  )
}

function CheckSheet({ used, unit, onClose }: { used: Used; unit: string; onClose: () => void }) {
  const { write } = useApp()
  const [until, setUntil] = useState(used.until ?? '')
  const [result, setResult] = useState(used.result ?? '')
  const [tried, setTried] = useState(false)
  const empty = until === '' && oneLine(result) === undefined

  async function keep() {
    setTried(true)
    if (empty) return
    const body = {
      instrument: used.id,
      name: used.name,
      ...(until === '' ? {} : { calibratedUntil: until }),
      ...given('result', oneLine(result)),
    }
    if ((await write(unit, [instrumentChecked(body)], words.checkedDone)) !== null) onClose()
  }

  return (
    <Sheet title={words.checkedTitle(used.name)} onClose={onClose}>
      <Form onKeep={keep}>
        <DateField
          label={words.checkedUntil}
          value={until}
          fault={tried && empty ? words.checkedNeeded : ''}
          onInput={setUntil}
        />
        <TextField label={words.checkedResult} value={result} onInput={setResult} input={{ maxLength: 300 }} />
        <button type="submit" class="button button--act">
          {words.checkedDo}
        </button>
      </Form>
    </Sheet>
  )
}
