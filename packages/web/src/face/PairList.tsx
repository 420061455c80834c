import type { Pair } from '@gripbook/engine'
import { sentence, words } from '../words/index.ts'

type Props = {
  pairs: readonly Pair[]
  named: (kind: string) => string
  shown: string | undefined
  onShow: (kind: string) => void
}

const ORDER: Record<Pair['verdict'], number> = { fits: 0, may: 1, cannot: 2 }

/** Every bolt of the tray in this hole alone: whether it fits, and at which line it fails. A tap draws it in. */
export function PairList({ pairs, named, shown, onShow }: Props) {
  const sorted = [...pairs].sort((a, b) => ORDER[a.verdict] - ORDER[b.verdict])
  return (
    <div class="stack stack--tight">
      <h3>{words.verdict.pairs}</h3>
      <ul class="lines">
        {sorted.map(({ kind, verdict, why, margin, turns, close }) => (
          <li key={kind} class={`pair pair--${verdict}`}>
            <button
              type="button"
              class="pair__button"
              aria-pressed={shown === kind}
              aria-label={`${words.verdict.sectionOf(named(kind))}: ${words.verdict.pairVerdicts[verdict]}`}
              onClick={() => onShow(kind)}
            >
              <span class="pair__shape" aria-hidden="true" />
              <b>{named(kind)}</b>
              <span>{words.verdict.pairVerdicts[verdict]}</span>
              <span class="pair__margin">{marginText(margin)}</span>
            </button>
            <p class="pair__why">
              {sentence(why)}
              {turns !== undefined && ` ${words.verdict.turns(turns[0].toFixed(1), turns[1].toFixed(1))}.`}
              {close?.map((what) => ` ${words.verdict.close(what)}`)}
            </p>
          </li>
        ))}
      </ul>
    </div>
  )
}

function marginText(margin: Pair['margin']): string {
  const figure = (value: number | null) => (value === null ? '?' : `${value > 0 ? '+' : ''}${value.toFixed(1)}`)
  if (margin === null) return ''
  if (typeof margin === 'number') return words.verdict.margin(`${figure(margin)} mm`)
  return words.verdict.margin(`${figure(margin[0])} … ${figure(margin[1])} mm`)
}
