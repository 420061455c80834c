/** A bolt is run down: its turns, where they are counted, are judged before it counts as seated. */
import { Icon } from '../look/icons.tsx'
import { readTurns, turnsText } from '../readings/turns.ts'
import { words } from '../words/bench.ts'
import { DockFrame, type DockProps, Main, useDockKeys } from './dockParts.tsx'
import { happeningsOf } from './doing.ts'
import { countOff } from './resistance.ts'
import { Stepper } from './Stepper.tsx'
import { useFigure } from './useFigure.ts'

export function TurnsDock({ bench, general }: DockProps) {
  const { step, face, pair } = bench
  const { text, typed, fault, off, field, set, setFault, setOff, focus } = useFigure<{
    turns: number
    side: 'fewer' | 'more'
  }>(bench)
  const expected = pair?.turns

  function seated(turns: number | null) {
    void bench.act(happeningsOf(face.id, step, turns === null ? {} : { turns }))
  }

  function done() {
    if (typed.current.trim() === '') return seated(null)
    const turns = readTurns(typed.current)
    if (turns === null) return setFault(words.notTurns(typed.current))
    const side = countOff(turns, pair)
    if (side === null) return seated(turns)
    setOff({ turns, side })
  }
  useDockKeys(text, general, {
    done,
    type: (more) => {
      set(typed.current + more)
      focus()
    },
    erase: () => set(typed.current.slice(0, -1)),
  })

  function nudge(by: number) {
    const now = readTurns(typed.current)
    const from = expected === undefined ? 0 : Math.round(expected[0] * 2) / 2
    set(turnsText(now === null ? from + (expected === undefined ? Math.max(0, by) : 0) : Math.max(0, now + by)))
  }

  if (off !== null) {
    const said = off.side === 'fewer' ? words.fewer : words.more
    return (
      <DockFrame bench={bench} general={general}>
        <p class="bench-alarm" role="alert">
          <Icon name="warning" />
          {said(turnsText(off.turns), expected!.map(turnsText).join('–'))}
        </p>
        <button type="button" class="button" onClick={() => seated(off.turns)}>
          {words.keepCount}
        </button>
        <Main
          key="again"
          onClick={() => {
            set('')
            focus()
          }}
        >
          {words.countAgain}
        </Main>
      </DockFrame>
    )
  }
  const count = readTurns(text)
  return (
    <DockFrame bench={bench} general={general}>
      <Stepper
        label={words.turnsField}
        less={words.fewerTurn}
        more={words.moreTurn}
        text={text}
        fault={fault}
        fieldRef={field}
        onText={set}
        onStep={(by) => nudge(by / 2)}
        onKeep={done}
      />
      <Main key="seated" onClick={done}>
        <Icon name="tick" size={30} />
        {count === null ? words.seated : words.seatedAfter(turnsText(count))}
      </Main>
    </DockFrame>
  )
}
