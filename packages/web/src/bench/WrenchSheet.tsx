/** With which wrench the face is tightened: chosen once, with what sits on it. */
import { instrumentChecked } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import type { Wrench } from '../device/settings.ts'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { place } from '../units/here.ts'
import { sayCalendarDay } from '../units/when.ts'
import { words } from '../words/bench.ts'
import { ExtensionFields } from './ExtensionFields.tsx'
import { dayOf } from './today.ts'
import { doubtsOf, figureIn, newtonMetres, toSet } from './torque.ts'
import type { Bench } from './useBench.ts'
import { WrenchForm } from './WrenchForm.tsx'
import { type ExtensionText, extensionOf, RATCHET, wrenchElsewhere } from './wrenchHere.ts'
import './WrenchSheet.css'

export function WrenchSheet({ bench, onClose }: { bench: Bench; onClose: () => void }) {
  const { settings, write } = useApp()
  const { folded, steps, wrench: here } = bench
  const known = wrenchElsewhere(settings.wrenches, folded.entries, (number) => {
    const { name } = folded.things.instrument[number] ?? {}
    return typeof name?.value === 'string' ? name.value : null
  })
  const [adding, setAdding] = useState(settings.wrenches.length === 0 || known !== null)
  const [foot, setFoot] = useState<ExtensionText | null>(
    here.extension === null ? null : { ...here.extension, angle: here.extension.angle ?? 0 },
  )
  const [withFoot, setWithFoot] = useState(here.extension !== null)
  const [tried, setTried] = useState(0)
  const extension = withFoot && foot !== null ? extensionOf(foot) : null
  const torques = steps.flatMap(({ wanted }) => {
    const torque = newtonMetres(wanted)
    const set = torque === null ? null : toSet(torque, extension)
    return set === null ? [] : [set]
  })
  const today = dayOf(new Date())

  function use(wrench: Wrench): boolean {
    const missing = withFoot && foot === null && wrench.tells !== 'nothing'
    if (missing) setTried(tried + 1)
    else void take(wrench)
    return !missing
  }

  async function take(wrench: Wrench) {
    here.choose(wrench, withFoot ? foot : null)
    // The record knows the wrench by its number: what its certificate says goes with it to every device.
    const known = wrench.number === undefined ? undefined : folded.things.instrument[wrench.number]
    if (wrench.number !== undefined && known?.calibratedUntil?.value !== wrench.calibratedUntil)
      await write(folded.id, [
        instrumentChecked({
          instrument: wrench.number,
          name: wrench.name,
          ...(wrench.calibratedUntil === undefined ? {} : { calibratedUntil: wrench.calibratedUntil }),
        }),
      ])
    onClose()
  }

  const line = ({ range, calibratedUntil }: Wrench) =>
    words.wrenchLine(
      range === undefined
        ? null
        : `${figureIn(range[0], settings.torque)}–${figureIn(range[1], settings.torque)} ${settings.torque}`,
      calibratedUntil === undefined ? null : sayCalendarDay(calibratedUntil, place.language),
    )
  return (
    <Sheet title={words.wrenchTitle} onClose={onClose}>
      <p class="quiet">{words.wrenchWhat}</p>
      <Choice
        label={words.extension}
        options={[
          { value: 'none', words: words.noExtension },
          { value: 'foot', words: words.withExtension },
        ]}
        value={withFoot ? 'foot' : 'none'}
        onChoose={(chosen) => setWithFoot(chosen === 'foot')}
      />
      {withFoot && <ExtensionFields value={foot} tried={tried} onChange={setFoot} />}
      <ul class="stack stack--tight">
        {[...settings.wrenches, RATCHET].map((wrench) => (
          <li key={wrench.name}>
            <button
              type="button"
              class="button button--wide wrench"
              aria-current={wrench.name === here.wrench?.name ? 'true' : undefined}
              onClick={() => use(wrench)}
            >
              <Icon name={wrench.name === here.wrench?.name ? 'tick' : 'gear'} />
              <span class="wrench__words">
                <span dir="auto">{wrench.tells === 'nothing' ? words.feelWrench : wrench.name}</span>
                <span class="quiet">
                  {wrench.tells === 'nothing' ? words.byFeelWhat : `${words.tells[wrench.tells]} · ${line(wrench)}`}
                </span>
                {doubtsOf(wrench, torques, today).map((doubt) => (
                  <span key={doubt} class="wrench__doubt">
                    <Icon name="warning" size={18} />
                    {words.doubts[doubt]}
                  </span>
                ))}
              </span>
            </button>
          </li>
        ))}
      </ul>
      {adding ? (
        <WrenchForm taken={settings.wrenches} known={known} onKept={use} />
      ) : (
        <button type="button" class="button button--plain" onClick={() => setAdding(true)}>
          <Icon name="plus" />
          {words.addWrench}
        </button>
      )}
    </Sheet>
  )
}
