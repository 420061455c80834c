/** The clocks that run, on every screen of the bench, on every device; each rings once when it has run out. */
import { clockStopped, type FoldedUnit } from '@gripbook/record'
import { useEffect, useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/bench.ts'
import { clockState, clockText, runningClocks } from './clocks.ts'
import { ring } from './ring.ts'
import './Clocks.css'

export function Clocks({ folded }: { folded: FoldedUnit }) {
  const { write } = useApp()
  const [now, setNow] = useState(Date.now)
  const clocks = runningClocks(folded, now)
  const any = clocks.length > 0
  const rung = useRef(new Set<string>())
  useEffect(() => {
    if (!any) return
    setNow(Date.now())
    const timer = setInterval(() => setNow(Date.now()), 1000)
    return () => clearInterval(timer)
  }, [any])
  const over = clocks.filter(({ left }) => left <= 0)
  const fresh = over.filter(({ clock }) => !rung.current.has(clock))
  useEffect(() => {
    for (const { clock } of fresh) rung.current.add(clock)
    if (fresh.length > 0) ring()
  })
  if (!any) return null
  return (
    <>
      <ul class="clocks" aria-label={words.clocks}>
        {clocks.map((one) => {
          const state = clockState(one)
          return (
            <li key={one.clock} class={`clocks__one clocks__one--${state}`}>
              <Icon name={state === 'over' ? 'warning' : 'waiting'} />
              <span class="clocks__what" dir="auto">
                {one.what}
                {state === 'over' && <b> {words.clockOver}</b>}
              </span>
              <span class="clocks__time" role="timer">
                {clockText(one.left)}
              </span>
              <button
                type="button"
                class="button clocks__stop"
                aria-label={words.clockStop(one.what)}
                onClick={() =>
                  void write(folded.id, [clockStopped({ clock: one.clock })], words.clockStopped(one.what))
                }
              >
                {words.clockStopWord}
              </button>
            </li>
          )
        })}
      </ul>
      <p class="unseen" role="alert">
        {over.map(({ what }) => words.clockSaid(what)).join(' ')}
      </p>
    </>
  )
}
