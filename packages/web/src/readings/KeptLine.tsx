/** What was kept at the measuring station: the last of it beside the keys, and each with what follows from it. */
import type { FaceAnswer, Quantity } from '@gripbook/engine'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'
import type { Changed } from './changed.ts'
import type { ReadQuantity, Spot } from './quantities.ts'
import type { Slip } from './slip.ts'

export type Kept = {
  key: string
  spot: Spot
  quantity: ReadQuantity
  value: Quantity
  event: string
  slip: Slip | null
  /** The answer as it stood before. */
  before: FaceAnswer | null
}

type LastProps = { doubted: boolean; words: { kept: string; slip: string | null }; onOpen: () => void }

/** Where the keys take the room of what was kept: the last of it, and the way to all of it. */
export function LastLine({ doubted, words: said, onOpen }: LastProps) {
  return (
    <button type="button" class={`button station__last${doubted ? ' station__last--doubted' : ''}`} onClick={onOpen}>
      <Icon name={doubted ? 'warning' : 'tick'} />
      <span>{doubted ? words.readings.lookAgain(said.kept) : said.kept}</span>
    </button>
  )
}

/** It looks like a slip, or does not go with what was known. */
export function isDoubted({ slip }: Kept, changed: Changed | null): boolean {
  return slip !== null || (changed !== null && changed.contradicted.length > 0)
}

type KeptLineProps = {
  kept: Kept
  changed: Changed | null
  words: { kept: string; slip: string | null }
  onUndo: () => void
  onAgain: () => void
  onStands: () => void
}

/** What was kept last, whether it looks like a slip, and what it has settled. */
export function KeptLine({ kept, changed, words: said, onUndo, onAgain, onStands }: KeptLineProps) {
  const against = changed !== null && changed.contradicted.length > 0
  const doubted = isDoubted(kept, changed)
  return (
    <div class={`kept${doubted ? ' kept--doubted' : ''}`}>
      <Icon name={doubted ? 'warning' : 'tick'} />
      <div class="kept__words">
        <p>{said.kept}</p>
        {said.slip !== null && <p class="kept__strong">{said.slip}</p>}
        {against && <p class="kept__strong">{words.readings.nowContradicted(changed.contradicted)}</p>}
        {changed !== null && changed.settled.length > 0 && (
          <p class="kept__strong">{words.readings.nowSettled(changed.settled)}</p>
        )}
        {changed !== null && changed.open.length > 0 && <p>{words.readings.nowOpen(changed.open)}</p>}
      </div>
      <div class="kept__ways">
        {doubted && (
          <button type="button" class="button" onClick={onAgain}>
            {words.readings.again}
          </button>
        )}
        {kept.slip !== null && (
          <button type="button" class="button" onClick={onStands}>
            {words.readings.stands}
          </button>
        )}
        <button type="button" class="button button--undo" onClick={onUndo}>
          <Icon name="undo" />
          {words.shell.undo}
        </button>
      </div>
    </div>
  )
}
