/** What each bolt holds, as a bar against the line of its target; a change since the step before has an arrow and its figure. */
import { words } from '../words/tightening.ts'
import type { Bar } from './steps.ts'
import './Bars.css'

type Props = {
  bars: readonly Bar[]
  /** N at which a bar is full. */
  full: number
  /** Without what changed. */
  plain?: boolean
}

export function Bars({ bars, full, plain = false }: Props) {
  return (
    <ul class={`bars${plain ? ' bars--plain' : ''}`}>
      {bars.map((bar) => {
        const change =
          bar.change === 0
            ? ''
            : bar.change > 0
              ? words.rose(words.load(bar.change))
              : words.fell(words.load(-bar.change))
        return (
          <li key={bar.hole} class={`bar${bar.turn === 'now' ? ' bar--now' : ''}`}>
            <span class="unseen">
              {words.bar(bar.hole, words.load(bar.load), words.load(bar.target), change, words.turns[bar.turn])}
            </span>
            <span class="bar__hole" aria-hidden="true" dir="auto">
              {bar.hole}
            </span>
            <span class="bar__track" aria-hidden="true">
              <span class="bar__load" style={{ width: `${(100 * bar.load) / full}%` }} />
              {bar.change < 0 && (
                <span
                  class="bar__lost"
                  style={{ left: `${(100 * bar.load) / full}%`, width: `${(-100 * bar.change) / full}%` }}
                />
              )}
              <span class="bar__target" style={{ left: `${(100 * bar.target) / full}%` }} />
            </span>
            <span class="bar__figure" aria-hidden="true">
              {bar.slack ? words.slack : words.load(bar.load)}
            </span>
            {!plain && (
              <span class="bar__change" aria-hidden="true">
                {words.changeShort(bar.change)}
              </span>
            )}
          </li>
        )
      })}
    </ul>
  )
}
