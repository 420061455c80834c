/** Beside the picture while corners are tapped on it. */
import { useState } from 'preact/hooks'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/tightening.ts'
import { leastCorners, type Target } from './drawn.ts'

type Props = {
  target: Target
  count: number
  closed: boolean
  /** Number of the corner that is picked, from 0. */
  picked: number | null
  /** For the outline: what "from the marks" does, and how far beyond the bolts it goes; null: no hole has a place. */
  fromMarks: { margin: string; take: () => void } | null
  onRemove: () => void
  onAgain: () => void
}

export function DrawPanel({ target, count, closed, picked, fromMarks, ...does }: Props) {
  const line = target.at === 'lines'
  const how = line ? (count < 2 ? words.areaWhat.lines : words.drawLine) : closed ? words.drawClosed : words.drawOpen
  return (
    <section class="stack" aria-label={words.drawTitle[target.at]}>
      <div>
        <h2>{words.drawTitle[target.at]}</h2>
        <p class="quiet">{how}</p>
      </div>
      <p class="face__count" role="status">
        {line ? words.ends(count) : words.corners(count)}
        {picked !== null && !line && ` · ${words.picked(picked + 1)}`}
      </p>
      <div class="buttons buttons--even">
        <button type="button" class="button" disabled={picked === null} onClick={does.onRemove}>
          <Icon name="minus" />
          {words.removeCorner}
        </button>
        <button type="button" class="button" disabled={count === 0} onClick={does.onAgain}>
          <Icon name="erase" />
          {words.startAgain}
        </button>
      </div>
      {fromMarks !== null && (
        <div class="stack stack--tight">
          <button type="button" class="button" onClick={fromMarks.take}>
            <Icon name="outline" />
            {words.fromMarks}
          </button>
          <p class="quiet">{words.fromMarksWhat(fromMarks.margin)}</p>
        </div>
      )}
    </section>
  )
}

type BarProps = { target: Target; count: number; canUndo: boolean; onUndo: () => void; onDone: () => void }

export function DrawBar({ target, count, canUndo, onUndo, onDone }: BarProps) {
  const least = leastCorners(target)
  const few = count > 0 && count < least
  /** How many corners there were when too few of them were to be all. */
  const [tried, setTried] = useState<number | null>(null)
  return (
    <nav class="face__bar tightening__bar" aria-label={words.drawTitle[target.at]}>
      <p class="field__fault" role="alert">
        {few && tried === count ? words.tooFew(least) : ''}
      </p>
      <button type="button" class="button button--stop" disabled={!canUndo} onClick={onUndo}>
        <Icon name="undo" />
        {words.undoCorner}
      </button>
      <button type="button" class="button button--act" onClick={() => (few ? setTried(count) : onDone())}>
        <Icon name="tick" />
        {words.drawDone}
      </button>
    </nav>
  )
}
