/** A pass at one bolt: clicked, typed on the keys, typed by the wrench itself, or by feel; out of its band it is caught at once. */
import { wrenchDeviation } from '@gripbook/engine'
import { boltBackedOut } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { FigurePad } from '../readings/FigurePad.tsx'
import { words } from '../words/bench.ts'
import { DockFrame, type DockProps, Main, useDockKeys } from './dockParts.tsx'
import { happeningsOf } from './doing.ts'
import { Stepper } from './Stepper.tsx'
import { against, figureIn, quantityIn, type Reached, reachedBy, stepped, toolAt, toolOf, toSet } from './torque.ts'
import { useFigure } from './useFigure.ts'
import { useTight } from './useTight.ts'
import { WrenchDoubts } from './WrenchDoubts.tsx'
import { RATCHET } from './wrenchHere.ts'

type Off = { reached: Reached & { ok: true }; side: 'below' | 'above' }

export function TorqueDock({ bench, general }: DockProps) {
  const { settings } = useApp()
  const { step, face, wanted, wrench: here, facts } = bench
  const { wrench, extension } = here
  const unit = settings.torque
  const clicks = wrench?.tells === 'clicks' && wanted !== null
  const tight = useTight()
  const { text, typed, fault, off, field, set, setFault, setOff, focus } = useFigure<Off>(bench)
  // What was begun before a reload is gone on with.
  const [typing, setTyping] = useState(text !== '')

  const onWrench = wanted === null ? null : toSet(wanted, extension)
  const tool = toolAt(here)
  const deviation = facts.deviation ?? (wanted === null ? 0 : wrenchDeviation(wanted))
  const band = wanted === null ? null : { atLeast: wanted * (1 - deviation), atMost: wanted * (1 + deviation) }
  const told = (torque: number) => `${figureIn(torque, unit)} ${unit}`

  const byFeel = () => void bench.act(happeningsOf(face.id, step, { tool: toolOf(RATCHET, null) }))
  const write = (torque: (Reached & { ok: true })['torque']) =>
    void bench.act(happeningsOf(face.id, step, { torque, ...(tool === undefined ? {} : { tool }) }))

  function keep(written: string) {
    const reached = reachedBy(written, unit, extension)
    if (!reached.ok) return reached.why === 'empty' ? undefined : setFault(words.notTorque(written))
    const side = band === null ? null : against(reached.newtonMetres, band)
    if (side === null) return write(reached.torque)
    setOff({ reached, side })
  }

  function done() {
    if (typed.current.trim() !== '' && wrench !== null) return keep(typed.current)
    if (wrench === null) return general.open('wrench')
    if (wrench.tells === 'nothing') return byFeel()
    if (clicks && !typing) return write(quantityIn(wanted, unit))
    focus()
  }

  const figure = wrench !== null && wrench.tells !== 'nothing' ? text : null
  useDockKeys(figure, general, {
    done,
    type: (more) => {
      setTyping(true)
      set(typed.current + more)
      focus()
    },
    erase: () => set(typed.current.slice(0, -1)),
  })

  if (off !== null && band !== null) {
    const reached = told(off.reached.newtonMetres)
    const said = (off.side === 'below' ? words.below : words.above)(reached, told(band.atLeast), told(band.atMost))
    return (
      <DockFrame bench={bench} general={general}>
        <div class="bench-alarm" role="alert">
          <Icon name="warning" />
          <div class="stack stack--tight">
            <p>
              <b>{said}</b>
            </p>
            <p>{off.side === 'below' ? words.belowWhat : words.aboveWhat}</p>
          </div>
        </div>
        <div class="buttons buttons--even">
          <button type="button" class="button" onClick={() => write(off.reached.torque)}>
            {words.goAllTheSame}
          </button>
          {off.side === 'above' && (
            <button type="button" class="button" onClick={() => set('')}>
              {words.enterAgain}
            </button>
          )}
        </div>
        {off.side === 'below' ? (
          <Main key="again" onClick={() => set('')}>
            {words.enterAgain}
          </Main>
        ) : (
          <Main
            key="out"
            onClick={() =>
              void bench.act([
                boltBackedOut({ face: face.id, hole: step.hole!, reason: `${words.outReason}: ${reached}` }),
              ])
            }
          >
            {words.takeOut}
          </Main>
        )}
      </DockFrame>
    )
  }

  if (wrench === null)
    return (
      <DockFrame bench={bench} general={general}>
        <button type="button" class="button" onClick={byFeel}>
          {words.tightenByFeel}
        </button>
        <Main key="choose" onClick={done}>
          <Icon name="gear" />
          {words.chooseWrench}
        </Main>
      </DockFrame>
    )

  const pad = wrench.tells !== 'nothing' && (typing || !clicks)
  return (
    <DockFrame bench={bench} general={general}>
      {!tight && <WrenchDoubts bench={bench} onWrench={() => general.open('wrench')} />}
      {!(tight && pad) && (
        <div class="buttons buttons--even dock__else">
          {clicks && (
            <button
              type="button"
              class="button"
              onClick={() => {
                set('')
                setTyping(!typing)
              }}
            >
              {typing ? words.itClicks : words.otherFigure}
            </button>
          )}
          {wrench.tells !== 'nothing' && (
            <button type="button" class="button" onClick={byFeel}>
              {words.byFeel}
            </button>
          )}
          {!tight && (
            <button type="button" class="button" onClick={() => general.open('wrench')}>
              {words.changeWrench}
            </button>
          )}
        </div>
      )}
      {pad && tight && (
        <Stepper
          label={words.torqueShort(unit)}
          less={words.lessTorque}
          more={words.moreTorque}
          text={text}
          fault={fault}
          fieldRef={field}
          onText={set}
          onStep={(by) => set(stepped(typed.current, onWrench, by, unit))}
          onKeep={done}
        />
      )}
      {pad && !tight ? (
        <FigurePad
          label={words.torqueField(step.hole ?? '')}
          unit={unit}
          text={text}
          fault={fault}
          onText={set}
          onKeep={keep}
          inputRef={(input) => {
            const fresh = field.current === null && input !== null
            field.current = input
            if (fresh) input.focus({ preventScroll: true })
          }}
        />
      ) : (
        <Main key="clicked" onClick={done}>
          <Icon name="tick" size={30} />
          {wrench.tells === 'nothing'
            ? words.tightenByFeel
            : pad
              ? text.trim() === ''
                ? words.keepTorque
                : words.keepThis(text.trim(), unit)
              : words.clicked(figureIn(onWrench ?? 0, unit), unit)}
        </Main>
      )}
    </DockFrame>
  )
}
