/** A bolt that is turned further by an angle after its torque: both as they were done. */
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { QuantityField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useTyped } from '../parts/useTyped.ts'
import { words } from '../words/bench.ts'
import { happeningsOf } from './doing.ts'
import { figureIn, type Reached, reachedBy, readDegrees, toolAt, toSet } from './torque.ts'
import type { Bench } from './useBench.ts'

export function AngleSheet({ bench, onClose }: { bench: Bench; onClose: () => void }) {
  const { settings, choose } = useApp()
  const { step, face, wanted, wrench: here } = bench
  const unit = settings.torque
  const place = `angle ${bench.folded.id} ${face.id}`
  const set = wanted === null ? null : toSet(wanted, here.extension)
  const { typed, type, clear } = useTyped(`${place} ${step.key}`, {
    torque: set === null ? '' : figureIn(set, unit),
    angle: settings.used[place] ?? '',
  })
  const [tried, setTried] = useState(false)
  const reached: Reached = reachedBy(typed.torque, unit, here.extension)
  const angle = readDegrees(typed.angle)
  const fault = (wrong: boolean, said: string) =>
    tried && wrong ? ({ state: 'fault', words: said } as const) : ({ state: 'empty' } as const)

  async function keep() {
    setTried(true)
    if (!reached.ok || angle === null) return
    choose({ used: { ...settings.used, [place]: typed.angle.trim() } })
    // A stop has its own sheet: what was typed stays until the entry is written.
    onClose()
    const tool = toolAt(here)
    const report = { torque: reached.torque, angle, ...(tool === undefined ? {} : { tool }) }
    if (await bench.act(happeningsOf(face.id, step, report))) clear()
  }

  return (
    <Sheet title={words.angleTitle} onClose={onClose}>
      <Form onKeep={keep}>
        <p>{words.angleWhat}</p>
        <QuantityField
          label={words.torqueField(step.hole ?? '')}
          unit={unit}
          value={typed.torque}
          typed={fault(!reached.ok, words.notTorque(typed.torque))}
          onInput={(torque) => type({ torque })}
        />
        <QuantityField
          label={words.angleField}
          unit="°"
          value={typed.angle}
          typed={fault(angle === null, words.angleFault)}
          onInput={(angle) => type({ angle })}
        />
        <button type="submit" class="button button--act button--wide">
          {words.angleKeep}
        </button>
      </Form>
    </Sheet>
  )
}
