/** A crow-foot or extension off the axis: its two lengths and its angle. */
import { type LengthUnit, MILLIMETRES_IN } from '@gripbook/engine'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { QuantityField, typedLength } from '../parts/Field.tsx'
import { singleFigure } from '../settings/instruments.ts'
import { useFaultFocus } from '../settings/useFaultFocus.ts'
import { words } from '../words/bench.ts'
import { toSet } from './torque.ts'
import { type ExtensionText, extensionOf } from './wrenchHere.ts'

/** `tried`: how often a wrench was to be used with lengths that are missing. */
type Props = { value: ExtensionText | null; tried: number; onChange: (value: ExtensionText | null) => void }

export function ExtensionFields({ value, tried, onChange }: Props) {
  const { settings } = useApp()
  const unit = settings.length
  const shown = (mm: number | undefined) =>
    mm === undefined ? '' : String(Number((mm / MILLIMETRES_IN[unit]).toFixed(2)))
  const [lever, setLever] = useState(shown(value?.lever))
  const [reach, setReach] = useState(shown(value?.reach))
  const [angle, setAngle] = useState(value === null ? '0' : String(value.angle))
  const fault = lever !== '' && reach !== '' && value === null
  const missing = tried > 0 && value === null && !fault
  const state = (said: string | false) =>
    said === false ? ({ state: 'empty' } as const) : ({ state: 'fault', words: said } as const)
  const fields = useFaultFocus<HTMLDivElement>(tried)

  function changed(next: { lever: string; reach: string; angle: string }) {
    setLever(next.lever)
    setReach(next.reach)
    setAngle(next.angle)
    const [l, r] = [millimetres(next.lever, unit), millimetres(next.reach, unit)]
    const degrees = /^\d{1,3}([.,]\d+)?$/.test(next.angle.trim()) ? Number(next.angle.replace(',', '.')) : Number.NaN
    const good = l !== null && r !== null && degrees >= 0 && degrees <= 180
    const made = good ? { lever: l, reach: r, angle: degrees } : null
    onChange(made !== null && toSet(1, extensionOf(made)) !== null ? made : null)
  }

  return (
    <div class="stack stack--tight" ref={fields}>
      <QuantityField
        label={words.lever}
        unit={unit}
        value={lever}
        typed={state(missing && lever === '' && words.extensionNeeded)}
        onInput={(text) => changed({ lever: text, reach, angle })}
      />
      <QuantityField
        label={words.reach}
        unit={unit}
        value={reach}
        typed={state(fault ? words.extensionFault : missing && lever !== '' && words.extensionNeeded)}
        onInput={(text) => changed({ lever, reach: text, angle })}
      />
      <QuantityField
        label={words.angle}
        hint={words.angleHint}
        unit="°"
        value={angle}
        typed={{ state: 'empty' }}
        onInput={(text) => changed({ lever, reach, angle: text })}
      />
      <p class="quiet">{words.extensionNote}</p>
    </div>
  )
}

function millimetres(text: string, unit: LengthUnit): number | null {
  const typed = typedLength(text, unit)
  const figure = typed.state === 'read' ? singleFigure(typed.value) : null
  return figure === null || figure.value <= 0 ? null : figure.value * MILLIMETRES_IN[figure.unit ?? unit]
}
