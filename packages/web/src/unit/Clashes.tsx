import { type Clash, clashSettled, type FoldedUnit } from '@gripbook/record'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { place } from '../units/here.ts'
import { sayWhen } from '../units/when.ts'
import { words } from '../words/index.ts'
import { choicesOf, type Said } from './clashes.ts'
import { Picture } from './Picture.tsx'
import { kindIn, sayClash } from './sayClash.ts'
import { useNames } from './useNames.ts'

/** What two devices wrote without knowing of each other: a person chooses which of them holds. */
export function Clashes({ folded }: { folded: FoldedUnit }) {
  const nameOf = useNames()
  if (folded.clashes.length === 0) return null
  return (
    <section class="card stack clashes">
      <div class="stack stack--tight">
        <h2 class="sign sign--cannot">
          <Icon name="warning" />
          {words.unit.clashes}
        </h2>
        <p>{words.unit.clashesWhat}</p>
      </div>
      <ul class="lines clashes__list">
        {folded.clashes.map((clash) => (
          <li key={`${clash.place.join('\n')}\n${clash.field}`}>
            <OneClash clash={clash} folded={folded} nameOf={nameOf} />
          </li>
        ))}
      </ul>
    </section>
  )
}

type OneProps = { clash: Clash; folded: FoldedUnit; nameOf: (who: string) => string }

function OneClash({ clash, folded, nameOf }: OneProps) {
  const { write } = useApp()
  const settle = (stands: string | null) =>
    write(folded.id, [clashSettled({ at: [...clash.place], field: clash.field, stands })], words.unit.settled)
  return (
    <div class="stack stack--tight">
      <h3 dir="auto">{sayClash(clash, folded)}</h3>
      <ul class="stack stack--tight">
        {choicesOf(clash, kindIn(clash, folded)).map(({ said, entries }) => (
          <li key={entries[0]!.event} class="clashes__choice">
            <div class="clashes__said">
              <p class="clashes__value" dir="auto">
                {saidWords(said)}
              </p>
              {said.is === 'photograph' && <Picture photograph={said.photograph} alt="" />}
              {entries.map(({ event, who, at }) => (
                <p key={event} class="quiet" dir="auto">
                  {words.unit.saidBy(nameOf(who), sayWhen(at, Date.now(), place))}
                </p>
              ))}
            </div>
            <button
              type="button"
              class="button"
              aria-label={words.unit.holdsLabel(saidWords(said))}
              onClick={() => void settle(entries[0]!.event)}
            >
              <Icon name="tick" />
              {words.unit.holds}
            </button>
          </li>
        ))}
      </ul>
      {clash.field !== 'there' && (
        <div>
          <button type="button" class="button button--plain" onClick={() => void settle(null)}>
            {words.unit.noneHolds}
          </button>
        </div>
      )}
    </div>
  )
}

function saidWords(said: Said): string {
  return said.is === 'text' ? said.text : words.unit.said[said.is]
}
