/** Two orders side by side: their figures in one table, what the bolts hold at the end as bars. */
import type { OrderAnswer, TighteningAnswer } from '@gripbook/engine'
import { useId, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/tightening.ts'
import { Bars } from './Bars.tsx'
import { besides, type Figure, figuresOf } from './compare.ts'
import { barsAt, fullBar } from './steps.ts'

type Props = {
  answer: TighteningAnswer
  /** The one that the picture shows. */
  left: OrderAnswer
  onLeft: (kind: OrderAnswer['kind']) => void
}

export function CompareTab({ answer, left, onLeft }: Props) {
  const { settings } = useApp()
  const [picked, setPicked] = useState<OrderAnswer['kind'] | null>(null)
  if (answer.orders.length < 2) return <p>{words.compareOne}</p>
  const right = answer.orders.find(({ kind }) => kind === picked) ?? besides(answer, left)
  const full = fullBar(answer, [left, right])
  return (
    <div class="stack">
      <div class="compare__picks">
        <Pick label={words.compareLeft} orders={answer.orders} value={left.kind} onPick={onLeft} />
        <Pick label={words.compareRight} orders={answer.orders} value={right.kind} onPick={setPicked} />
      </div>
      <table class="compare">
        <caption class="unseen">{words.compareFigures}</caption>
        <thead>
          <tr>
            <td />
            <th scope="col">{words.orders[left.kind]}</th>
            <th scope="col">{words.orders[right.kind]}</th>
          </tr>
        </thead>
        <tbody>
          {figuresOf([left, right], settings.length).map((figure) => (
            <Row key={figure.what} {...figure} />
          ))}
        </tbody>
      </table>
      <section class="stack stack--tight">
        <h2>{words.compareLoads}</h2>
        <div class="compare__loads">
          {[left, right].map((order, i) => (
            <div key={i} class="stack stack--tight">
              <h3>{words.orders[order.kind]}</h3>
              <Bars bars={atEnd(answer, order)} full={full} plain />
            </div>
          ))}
        </div>
      </section>
    </div>
  )
}

/** In the order of the holes, so that the same bolt stands in the same row; what the last turn changed is not the question. */
function atEnd(answer: TighteningAnswer, order: OrderAnswer) {
  const bars = barsAt(answer, order, order.steps.length - 1)
  return answer.holes.flatMap((hole) =>
    bars.filter((bar) => bar.hole === hole).map((bar) => ({ ...bar, change: 0, slack: false, turn: 'done' as const })),
  )
}

function Row({ what, shown, better }: Figure) {
  return (
    <tr>
      <th scope="row">{what}</th>
      {shown.map((text, i) => (
        <td key={i}>
          {text}
          {better === i && (
            <span class="compare__better">
              <Icon name="tick" size={16} />
              {words.better}
            </span>
          )}
        </td>
      ))}
    </tr>
  )
}

type Kind = OrderAnswer['kind']
type PickProps = { label: string; orders: readonly OrderAnswer[]; value: Kind; onPick: (kind: Kind) => void }

function Pick({ label, orders, value, onPick }: PickProps) {
  const id = useId()
  return (
    <div class="field">
      <label class="field__label" for={id}>
        {label}
      </label>
      <select id={id} class="input" value={value} onChange={(event) => onPick(event.currentTarget.value as Kind)}>
        {orders.map(({ kind }) => (
          <option key={kind} value={kind}>
            {words.orders[kind]}
          </option>
        ))}
      </select>
    </div>
  )
}
