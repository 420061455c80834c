import { Icon, type IconName } from '../../look/icons.tsx'
import type { Badge, Mark } from '../marks.ts'
import { sayMark } from '../sayMark.ts'

const BADGES: Record<Badge, IconName> = { swap: 'swap', measure: 'measure', missing: 'plus', check: 'question' }

const STEPS: Record<string, [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

type Props = {
  mark: Mark
  names: ReadonlyMap<string, string>
  named: boolean
  selected: boolean
  movable: boolean
  onOpen: (hole: string) => void
  /** By arrow keys, in screen pixels. */
  onStep: (dx: number, dy: number) => void
}

/** One hole on the photograph. Its shape, its sign and its words say the state; the colour says it once more. */
export function MarkButton({ mark, names, named, selected, movable, onOpen, onStep }: Props) {
  const { under } = mark
  const short = typeof under === 'string' ? '' : underText(under, names)
  return (
    <li
      class={`mark-place${mark.dim ? ' mark-place--dim' : ''}`}
      style={{ left: `${mark.x * 100}%`, top: `${mark.y * 100}%` }}
    >
      <button
        type="button"
        class={`mark mark--${mark.shape}${selected ? ' mark--selected' : ''}`}
        data-hole={mark.hole}
        aria-label={sayMark(mark, names)}
        aria-pressed={selected}
        onClick={(event) => {
          // A finger or a mouse has tapped through the stage already; this is the keyboard's and the screen reader's way.
          if (event.detail === 0) onOpen(mark.hole)
        }}
        onKeyDown={(event) => {
          const step = STEPS[event.key]
          if (!movable || step === undefined) return
          event.preventDefault()
          const far = event.shiftKey ? 10 : 1
          onStep(step[0] * far, step[1] * far)
        }}
      >
        <span class="mark__number">{mark.number ?? mark.hole}</span>
        {mark.badge !== null && (
          <span class={`mark__badge mark__badge--${mark.badge}`}>
            <Icon name={BADGES[mark.badge]} size={13} />
          </span>
        )}
      </button>
      {named && short !== '' && (
        <span class={`mark__under mark__under--${mark.shape}`} aria-hidden="true">
          {short}
        </span>
      )}
    </li>
  )
}

/** At most two, the likeliest first; a third is told by dots. */
function underText(kinds: readonly string[], names: ReadonlyMap<string, string>): string {
  const shown = kinds.slice(0, 2).map((kind) => names.get(kind) ?? kind)
  return `${shown.join(' / ')}${kinds.length > 2 ? ' …' : ''}`
}
