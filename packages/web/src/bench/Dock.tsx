/** What the thumb reaches: the one large action of the step, undo, and "it binds", which is always there. */
import { Icon } from '../look/icons.tsx'
import { words } from '../words/bench.ts'
import { words as shared } from '../words/index.ts'
import { DockFrame, type DockProps, Main, useDockKeys } from './dockParts.tsx'
import { happeningsOf } from './doing.ts'
import { TorqueDock } from './TorqueDock.tsx'
import { TurnsDock } from './TurnsDock.tsx'

export function Dock({ bench, general, finished }: DockProps & { finished: boolean }) {
  const { step } = bench
  if (step.done !== null && !(step.round.what === 'start' && !step.placed))
    return <DoneDock bench={bench} general={general} finished={finished} />
  if (step.round.what === 'run down') return <TurnsDock bench={bench} general={general} />
  if (step.round.what === 'pass') return <TorqueDock bench={bench} general={general} />
  return <PlainDock bench={bench} general={general} />
}

function PlainDock({ bench, general }: DockProps) {
  const { step, face, kind, brackets, mates } = bench
  const { what } = step.round
  const needsKind = what === 'start' && kind === null && bench.kinds.length > 0
  const placed = bench.folded.faces[face.id]?.holes[step.hole ?? '']?.placed?.value
  const left = mates.filter((one) => one.done === null)

  function done() {
    if (needsKind) {
      if (bench.waiting) return
      document.querySelector<HTMLElement>('.bench__body input[type="radio"]')?.focus()
      return
    }
    const report =
      what === 'start' ? { ...(kind === null || kind.id === placed ? {} : { kind: kind.id }), brackets } : {}
    void bench.act(happeningsOf(face.id, step, report))
  }
  useDockKeys(null, general, { done })

  const rest = what === 'snug' ? words.restSnug : what === 'mark' ? words.restMarked : null
  return (
    <DockFrame bench={bench} general={general}>
      {rest !== null && left.length > 1 && (
        <button
          type="button"
          class="button"
          onClick={() => void bench.act(left.flatMap((one) => happeningsOf(face.id, one)))}
        >
          {rest(left.length)}
        </button>
      )}
      <Main onClick={done} disabled={needsKind}>
        <Icon name={needsKind ? 'question' : 'tick'} size={30} />
        {needsKind
          ? bench.waiting
            ? shared.verdict.working
            : words.kindUnknown
          : { start: words.started, snug: words.snugged, mark: words.marked, close: words.closeIt }[what as 'start']}
      </Main>
    </DockFrame>
  )
}

function DoneDock({ bench, general, finished }: DockProps & { finished: boolean }) {
  const toNow = () => {
    if (finished) general.leave()
    else bench.look(null)
  }
  useDockKeys(null, general, { done: toNow })
  return (
    <DockFrame bench={bench} general={general}>
      <Main onClick={toNow}>
        <Icon name="forth" />
        {finished ? words.toUnit : words.toNow}
      </Main>
    </DockFrame>
  )
}
