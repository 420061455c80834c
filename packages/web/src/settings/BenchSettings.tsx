/** What is chosen for the bench mode: wrenches, the foot pedal, the voice. */
import { useEffect, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { mayBePedal } from '../bench/keys.ts'
import { figureIn } from '../bench/torque.ts'
import { VoiceChoice } from '../bench/VoiceChoice.tsx'
import { WrenchForm } from '../bench/WrenchForm.tsx'
import { Icon } from '../look/icons.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { words } from '../words/bench.ts'

export function BenchSettings() {
  return (
    <section class="card settings__part">
      <h2>{words.settingsTitle}</h2>
      <Wrenches />
      <Pedal />
      <VoiceChoice />
      <p class="quiet">{words.keysWhat}</p>
    </section>
  )
}

function Wrenches() {
  const { settings, choose } = useApp()
  const { wrenches, torque } = settings
  const [adding, setAdding] = useState(false)
  return (
    <div class="stack stack--tight">
      <h3>{words.wrenches}</h3>
      {wrenches.length === 0 && <p class="quiet">{words.noWrenches}</p>}
      <ul class="lines">
        {wrenches.map((wrench) => (
          <li key={wrench.name} class="row">
            <div>
              <p dir="auto">{wrench.name}</p>
              <p class="quiet">
                {words.tells[wrench.tells]}{' '}
                {words.wrenchLine(
                  wrench.range === undefined
                    ? null
                    : `${figureIn(wrench.range[0], torque)}–${figureIn(wrench.range[1], torque)} ${torque}`,
                  wrench.calibratedUntil ?? null,
                )}
              </p>
            </div>
            <button
              type="button"
              class="button button--plain"
              onClick={() => choose({ wrenches: wrenches.filter((one) => one !== wrench) })}
            >
              {words.wrenchRemove}
              <span class="unseen"> {wrench.name}</span>
            </button>
          </li>
        ))}
      </ul>
      <div class="buttons">
        <button type="button" class="button" onClick={() => setAdding(true)}>
          <Icon name="plus" />
          {words.addWrench}
        </button>
      </div>
      {adding && (
        <Sheet title={words.addWrench} onClose={() => setAdding(false)}>
          <WrenchForm
            taken={wrenches}
            keep={words.addWrench}
            onKept={(wrench) => {
              choose({ wrenches: [...wrenches, wrench] })
              setAdding(false)
              return true
            }}
          />
        </Sheet>
      )}
    </div>
  )
}

function Pedal() {
  const { settings, choose } = useApp()
  const [asking, setAsking] = useState(false)
  const [fault, setFault] = useState('')
  const { pedal } = settings
  useEffect(() => {
    if (!asking) return
    function pressed(event: KeyboardEvent) {
      if (event.key === 'Escape' || event.key === 'Tab') return setAsking(false)
      event.preventDefault()
      if (event.key === 'Unidentified') return
      if (!mayBePedal(event.key)) return setFault(words.pedalNot(words.keyName(event.key)))
      setFault('')
      setAsking(false)
      choose({ pedal: event.key })
    }
    document.addEventListener('keydown', pressed)
    return () => document.removeEventListener('keydown', pressed)
  }, [asking, choose])
  return (
    <div class="stack stack--tight">
      <h3>{words.pedal}</h3>
      <p class="quiet">{words.pedalWhat}</p>
      <p role="status">
        {asking ? words.pedalPress : pedal === null ? words.pedalNone : words.pedalNow(words.keyName(pedal))}
      </p>
      {fault !== '' && (
        <p class="field__fault" role="alert">
          {fault}
        </p>
      )}
      <div class="buttons">
        <button
          type="button"
          class="button"
          onClick={() => {
            setFault('')
            setAsking(true)
          }}
        >
          {words.pedalChoose}
        </button>
        {pedal !== null && (
          <button type="button" class="button button--plain" onClick={() => choose({ pedal: null })}>
            {words.pedalForget}
          </button>
        )}
      </div>
    </div>
  )
}
