import type { ComponentChildren } from 'preact'
import { words } from '../../words/index.ts'
import type { Asked } from './useAsked.ts'

type Props<T> = { asked: Asked<T>; again: () => void; children: (value: T) => ComponentChildren }

/** What came from the shop, or why it did not. */
export function AskedPart<T>({ asked, again, children }: Props<T>) {
  if (asked.state === 'asking') return <p class="quiet">{words.settings.asking}</p>
  if (asked.state === 'here') return <>{children(asked.value)}</>
  return (
    <div class="stack stack--tight">
      <p role="alert">{words.settings.refused(asked.code)}</p>
      <div>
        <button type="button" class="button" onClick={again}>
          {words.settings.tryAgain}
        </button>
      </div>
    </div>
  )
}
