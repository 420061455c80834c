import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { type Instrument, USUAL_INSTRUMENTS } from '../device/settings.ts'
import { Icon } from '../look/icons.tsx'
import { DateField, QuantityField, TextField, typedLength } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { place } from '../units/here.ts'
import { sayDay } from '../units/when.ts'
import { words } from '../words/index.ts'
import { isOut, nameTaken, rangeOf, singleFigure, withInstrument, withoutInstrument } from './instruments.ts'
import { useFaultFocus } from './useFaultFocus.ts'

type Open = { at: number | null } | 'usual' | null

/** What readings are taken with. */
export function Instruments() {
  const { settings, choose } = useApp()
  const [open, setOpen] = useState<Open>(null)
  const close = () => setOpen(null)
  return (
    <section class="card settings__part">
      <h2>{words.settings.instruments}</h2>
      <p class="quiet">{words.settings.instrumentsWhat}</p>
      <ul class="lines">
        {settings.instruments.map((instrument, at) => (
          <li key={instrument.name}>
            <button type="button" class="entry" onClick={() => setOpen({ at })}>
              <span class="entry__words">
                <span class="entry__name" dir="auto">
                  {instrument.name}
                </span>
                <span class="entry__more">
                  {words.settings.plusMinus(instrument.plusMinus, instrument.unit)}
                  {instrument.number !== undefined && ` · ${words.settings.number(instrument.number)}`}
                  {instrument.range !== undefined &&
                    ` · ${words.settings.reads(instrument.range[0], instrument.range[1], instrument.unit)}`}
                </span>
                {instrument.calibratedUntil !== undefined && <CalibrationLine until={instrument.calibratedUntil} />}
              </span>
              <Icon name="more" />
            </button>
          </li>
        ))}
      </ul>
      <div class="buttons">
        <button type="button" class="button" onClick={() => setOpen({ at: null })}>
          <Icon name="plus" />
          {words.settings.addInstrument}
        </button>
        <button type="button" class="button button--plain" onClick={() => setOpen('usual')}>
          {words.settings.usual}
        </button>
      </div>
      <p class="quiet">{words.settings.instrumentsSource}</p>
      {open === 'usual' && (
        <Sheet title={words.settings.usual} onClose={close}>
          <p>{words.settings.usualWhat}</p>
          <button
            type="button"
            class="button button--act button--wide"
            onClick={() => {
              choose({ instruments: [...USUAL_INSTRUMENTS] })
              close()
            }}
          >
            {words.settings.usualDo}
          </button>
        </Sheet>
      )}
      {open !== null && open !== 'usual' && <InstrumentSheet at={open.at} onClose={close} />}
    </section>
  )
}

function InstrumentSheet({ at, onClose }: { at: number | null; onClose: () => void }) {
  const { settings, choose } = useApp()
  const was = at === null ? undefined : settings.instruments[at]
  const unit = was?.unit ?? settings.length
  const [name, setName] = useState(was?.name ?? '')
  const [number, setNumber] = useState(was?.number ?? '')
  const [plusMinus, setPlusMinus] = useState(was === undefined ? '' : String(was.plusMinus))
  const [range, setRange] = useState(was?.range === undefined ? '' : `${was.range[0]}–${was.range[1]}`)
  const [until, setUntil] = useState(was?.calibratedUntil ?? '')
  const [tried, setTried] = useState(0)
  const form = useFaultFocus(tried)

  const nameFault =
    name.trim() === ''
      ? words.settings.nameMissing
      : nameTaken(settings.instruments, at, name)
        ? words.settings.nameTaken
        : ''
  const typed = typedLength(plusMinus, unit)
  const figure = typed.state === 'read' ? singleFigure(typed.value) : null
  const figureFault =
    typed.state === 'fault' ? typed.words : figure === null || figure.value <= 0 ? words.settings.plusMinusMissing : ''

  const ends = rangeOf(typedLength(range, figure?.unit ?? unit))
  const rangeFault = range.trim() === '' || ends !== null ? '' : words.settings.rangeFault

  function keep() {
    setTried(tried + 1)
    if (nameFault + figureFault + rangeFault !== '' || figure === null) return
    const to: Instrument = {
      name: name.trim(),
      ...(number.trim() === '' ? {} : { number: number.trim() }),
      plusMinus: figure.value,
      unit: figure.unit ?? unit,
      ...(ends === null ? {} : { range: ends }),
      ...(until === '' ? {} : { calibratedUntil: until }),
    }
    choose(withInstrument(settings, at, to))
    onClose()
  }

  return (
    <Sheet title={at === null ? words.settings.addInstrument : words.settings.changeInstrument} onClose={onClose}>
      <Form formRef={form} onKeep={keep}>
        <TextField
          label={words.settings.instrumentName}
          value={name}
          fault={tried > 0 ? nameFault : ''}
          input={{ maxLength: 80 }}
          onInput={setName}
        />
        <QuantityField
          label={words.settings.instrumentPlusMinus}
          hint={words.settings.instrumentPlusMinusHint}
          unit={unit}
          value={plusMinus}
          typed={tried > 0 && figureFault !== '' ? { state: 'fault', words: figureFault } : { state: 'empty' }}
          onInput={setPlusMinus}
        />
        <TextField
          label={words.settings.instrumentNumber}
          value={number}
          input={{ maxLength: 40 }}
          onInput={setNumber}
        />
        <TextField
          label={words.settings.instrumentRange(unit)}
          hint={words.settings.instrumentRangeHint}
          value={range}
          fault={tried > 0 ? rangeFault : ''}
          input={{ inputMode: 'decimal', maxLength: 40 }}
          onInput={setRange}
        />
        <DateField
          label={words.settings.calibratedUntil}
          value={until}
          hint={words.settings.calibratedUntilHint}
          onInput={setUntil}
        />
        <button type="submit" class="button button--act button--wide">
          {words.shell.keep}
        </button>
        {at !== null && (
          <button
            type="button"
            class="button button--plain"
            onClick={() => {
              choose(withoutInstrument(settings, at))
              onClose()
            }}
          >
            {words.settings.remove}
          </button>
        )}
      </Form>
    </Sheet>
  )
}

/** Until when it is in calibration; said in words where the day has passed. */
function CalibrationLine({ until }: { until: string }) {
  const day = sayDay(until, place)
  const out = isOut(until, new Date().toISOString())
  return (
    <span class="entry__more">{out ? words.settings.calibrationEnded(day) : words.settings.inCalibration(day)}</span>
  )
}
