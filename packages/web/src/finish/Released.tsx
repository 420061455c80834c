import type { FoldedUnit } from '@gripbook/record'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { sayIn } from '../unit/sayIn.ts'
import { useNames } from '../unit/useNames.ts'
import { Go } from '../units/Go.tsx'
import { place } from '../units/here.ts'
import { sayWhen } from '../units/when.ts'
import { words } from '../words/finish.ts'
import { words as all } from '../words/index.ts'

/** The release: who, when, of which record, and what was written since. */
export function Released({ folded }: { folded: FoldedUnit }) {
  const { book } = useApp()
  const nameOf = useNames()
  const say = sayIn(folded)
  const { released } = folded.work
  if (released === undefined) return null
  const entry = folded.entries.find(({ id }) => id === released.event)
  const since = folded.entries.filter(({ id }) => folded.sinceRelease.includes(id))
  return (
    <section class="card stack stack--tight released">
      <h2 class="sign sign--fits">
        <Icon name="tick" />
        {words.releasedTitle}
      </h2>
      <p dir="auto">{words.releasedBy(nameOf(released.who), sayWhen(released.at, Date.now(), place))}</p>
      {entry?.body.onlyPerson === true && <p>{words.releasedAlone}</p>}
      <details class="more">
        <summary>{words.recordHash}</summary>
        <p class="released__hash">{released.value.record}</p>
        <p class="quiet">{words.recordHashWhat}</p>
      </details>
      {since.length === 0 ? (
        <p class="quiet">{words.nothingSince}</p>
      ) : (
        <>
          <h3 class="sign sign--cannot">
            <Icon name="warning" size={20} />
            {words.sinceTitle(since.length)}
          </h3>
          <p class="quiet">{words.sinceWhat}</p>
          <ul class="lines">
            {since.map((one) => (
              <li key={one.id} class="released__entry" dir="auto">
                {say(one)}
              </li>
            ))}
          </ul>
          <Go to={{ at: 'story', book: book.name, unit: folded.id }} class="button">
            <Icon name="list" />
            {all.unit.story}
          </Go>
        </>
      )}
    </section>
  )
}
