/** A crow-foot or extension off the axis: its two lengths and its angle. */
import { type LengthUnit, MILLIMETRES_IN } from '@gripbook/engine'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { QuantityField, typedLength } from '../parts/Field.tsx'
import { singleFigure } from '../settings/instruments.ts'
import { words } from '../words/bench.ts'
import { toSet } from './torque.ts'
import { type ExtensionText, extensionOf } from './wrenchHere.ts'

type Props = { value: ExtensionText | null; onChange: (value: ExtensionText | null) => void }

export function ExtensionFields({ value, onChange }: Props) {
  const { settings } = useApp()
  const unit = settings.length
  const shown = (mm: number | undefined) =>
    mm === undefined ? '' : String(Number((mm / MILLIMETRES_IN[unit]).toFixed(2)))
  const [lever, setLever] = useState(shown(value?.lever))
  const [reach, setReach] = useState(shown(value?.reach))
  const [angle, setAngle] = useState(value === null ? '0' : String(value.angle))
  const fault = lever !== '' && reach !== '' && value === null

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
    <div class="stack stack--tight">
      <QuantityField
        label={words.lever}
        unit={unit}
        value={lever}
        typed={{ state: 'empty' }}
        onInput={(text) => changed({ lever: text, reach, angle })}
      />
      <QuantityField
        label={words.reach}
        unit={unit}
        value={reach}
        typed={fault ? { state: 'fault', words: words.extensionFault } : { state: 'empty' }}
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
