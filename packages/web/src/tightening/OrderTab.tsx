/** The order to go by, why, and the others with their figures. */

import type { OrderAnswer, TighteningAnswer } from '@gripbook/engine'
import type { FaceWork } from '@gripbook/record'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { sayDay } from '../units/when.ts'
import { language } from '../words/index.ts'
import { words } from '../words/tightening.ts'
import { shareOf } from './figures.ts'
import { advisedOrder, orderInUse, sayAdvice, sayBesideStated, sayPasses, ways } from './said.ts'
import { passesFor } from './steps.ts'
import { WithUnit } from './WithUnit.tsx'

type Props = {
  answer: TighteningAnswer
  searched: boolean
  /** The one that is shown. */
  order: OrderAnswer
  chosen: FaceWork['orderChosen'] | undefined
  /** The way to the bench, where the order is followed. */
  toBench: ComponentChildren
  shares: readonly number[]
  offered: readonly (readonly number[])[]
  onShow: (kind: OrderAnswer['kind']) => void
  onShares: (shares: readonly number[]) => void
}

export function OrderTab(props: Props) {
  const { answer, searched, order, chosen, toBench, shares, offered, onShow, onShares } = props
  const advised = advisedOrder(answer)
  const inUse = orderInUse(answer.orders, chosen)
  const beside = order === advised ? sayBesideStated(answer) : null
  return (
    <div class="stack">
      <section class="plan-lead" aria-live="polite">
        <h2 class="plan-lead__words">{order === advised ? sayAdvice(answer, searched) : words.orders[order.kind]}</h2>
        {order !== advised && <p class="quiet">{words.orderHow[order.kind]}</p>}
        <Ways order={order} />
        <p>
          {sayPasses(order)} {words.lastRounds(order.lastRounds.count, order.lastRounds.still)}
        </p>
        <p class="quiet">{words.marksAre}</p>
        {beside !== null && <p class="quiet">{beside}</p>}
        {chosen !== undefined && (
          <p class="plan-chosen">
            <Icon name="tick" />
            <span>
              {words.chosenBefore(chosen.value.name, sayDay(chosen.at, { language }))}
              {inUse === null && ` ${words.chosenOther}`}
            </span>
          </p>
        )}
        {chosen !== undefined && toBench}
      </section>
      <section class="stack stack--tight">
        <h2>{words.firstTitle}</h2>
        <ol class="plan-first">
          {words.first.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ol>
        <p class="quiet">{words.firstFrom}</p>
      </section>
      <section class="stack stack--tight">
        <h2>{words.theOrders}</h2>
        <p class="quiet">{words.spreadWhat}</p>
        <ul class="plan-orders">
          {answer.orders.map((one) => (
            <OrderLine
              key={one.kind}
              order={one}
              shown={one === order}
              advised={one === advised}
              inUse={one === inUse}
              onShow={() => onShow(one.kind)}
            />
          ))}
        </ul>
      </section>
      <HowMany order={order} />
      <Choice
        label={words.sharesTitle}
        options={offered.map((one) => ({ value: one.join(), words: words.shareList(one) }))}
        value={shares.join()}
        onChoose={(value) => onShares(offered.find((one) => one.join() === value)!)}
      />
      {answer.orders[0]?.kind === 'stated' && <p class="quiet">{words.sharesManual}</p>}
    </div>
  )
}

/** The holes one after the other; passes that go the same way once. */
function Ways({ order }: { order: OrderAnswer }) {
  const lines = ways(order)
  return (
    <ul class="stack stack--tight">
      {lines.map(({ from, to, sequence }) => (
        <li key={from}>
          {lines.length > 1 && <span class="quiet">{sayLine(order, from, to)}</span>}
          <p class="plan-way" dir="auto">
            <span aria-hidden="true">{words.sequence(sequence)}</span>
            <span class="unseen">{words.sequenceSaid(sequence)}</span>
          </p>
        </li>
      ))}
    </ul>
  )
}

/** Which passes go one way: by their numbers, or by their visit where there are several. */
function sayLine({ passes }: OrderAnswer, from: number, to: number): string {
  const line = passes.slice(from, to + 1)
  const visit = line[0]!.visit
  const several = new Set(passes.map((pass) => pass.visit)).size > 1
  if (several && line.every((pass) => pass.visit === visit))
    return words.visitLine(
      visit,
      line.map(({ share }) => share),
    )
  return line.map(({ share }, i) => words.passLine(from + i + 1, share)).join(' · ')
}

type LineProps = { order: OrderAnswer; shown: boolean; advised: boolean; inUse: boolean; onShow: () => void }

function OrderLine({ order, shown, advised, inUse, onShow }: LineProps) {
  const { settings } = useApp()
  const name = words.orders[order.kind]
  const signs = [advised ? words.advised : '', inUse ? words.using : ''].filter((sign) => sign !== '')
  return (
    <li>
      <button type="button" class="plan-order" aria-pressed={shown} onClick={onShow}>
        <span class="plan-order__name">
          {shown && <Icon name="tick" size={18} />}
          {name}
          {signs.length > 0 && <span class="plan-order__sign">{signs.join(' · ')}</span>}
        </span>
        <span class="plan-order__figures">
          <span>
            <b>{words.percent(order.spread)}</b> {words.spreadShort}
          </span>
          <span>
            <b>{words.percent(order.lastRounds.spread)}</b> {words.roundsShort}
          </span>
          <span>
            <b>{words.small(order.bow, settings.length)}</b> {words.bowShort}
          </span>
        </span>
      </button>
    </li>
  )
}

/** What brings the spread below a figure that one wants. */
function HowMany({ order }: { order: OrderAnswer }) {
  const [text, setText] = useState('5')
  const wanted = shareOf(text)
  const found = wanted === null ? null : passesFor(order, wanted)
  return (
    <section class="stack stack--tight">
      <h2>{words.passesTitle}</h2>
      <div class="plan-wanted">
        <WithUnit
          label={words.wanted}
          unit="%"
          value={text}
          fault={wanted === null ? words.draftFaults['no share'] : ''}
          onInput={setText}
        />
        <p role="status">
          {wanted === null
            ? ''
            : found === null
              ? words.passesNever(words.percent(order.lastRounds.spread))
              : words.passesFor(found.passes, found.rounds, words.percent(found.spread))}
        </p>
      </div>
    </section>
  )
}
