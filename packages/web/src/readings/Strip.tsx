/** All holes, or all bolts, each with what was read of it: how far one has come, and the way to any of them. */
import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'
import { keyOf, type Spot, same } from './quantities.ts'
import './Strip.css'

export type Cell = {
  spot: Spot
  name: string
  /** What stands under it; null: nothing was read. */
  value: string | null
  /** It was picked before the one that is picked now. */
  first?: boolean
}

type Props = { label: string; cells: readonly Cell[]; current: Spot | null; onPick: (spot: Spot) => void }

export function Strip({ label, cells, current, onPick }: Props) {
  const wide = cells.some(({ spot }) => spot.place === 'kind')
  return (
    <ul class={`strip${wide ? ' strip--wide' : ''}`} aria-label={label}>
      {cells.map(({ spot, name, value, first = false }) => (
        <li key={keyOf(spot)}>
          <button
            type="button"
            class={`strip__cell${value === null ? '' : ' strip__cell--read'}${first ? ' strip__cell--first' : ''}`}
            aria-current={same(spot, current) ? 'true' : undefined}
            onClick={() => onPick(spot)}
          >
            <span class="unseen">
              {words.readings.spot(spot, name)}, {value ?? words.readings.notRead}
              {first && `, ${words.readings.chosen}`}
            </span>
            <span class="strip__name" aria-hidden="true" dir="auto">
              {words.readings.spotShort(spot, name)}
            </span>
            <span class="strip__value" aria-hidden="true">
              {first ? <Icon name="deeper" size={18} /> : (value ?? '·')}
            </span>
          </button>
        </li>
      ))}
    </ul>
  )
}
