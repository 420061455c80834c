import { type FoldedUnit, type Open, stepSigned } from '@gripbook/record'
import { useMemo } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { useNames } from '../unit/useNames.ts'
import { place } from '../units/here.ts'
import { sayWhen } from '../units/when.ts'
import { words } from '../words/finish.ts'
import { hasWorked, mayCheck, type Person, signaturesOf, UNKNOWN, WHOLE_UNIT } from './signing.ts'

type Props = {
  folded: FoldedUnit
  person: Person
  alone: boolean
  open: readonly Open[]
  /** What is signed now would be written after the release. */
  isReleased: boolean
}

/** Who has signed, and what lets whoever works here sign. */
export function Signatures({ folded, person, alone, open, isReleased }: Props) {
  const { write } = useApp()
  const nameOf = useNames()
  const signatures = useMemo(() => signaturesOf(folded), [folded])
  const may = useMemo(() => mayCheck(folded, person), [folded, person.who, person.device, person.role])
  const stale = open.some(({ why }) => why.code === 'signed-before')
  const lacks = stale || open.some(({ why }) => why.code === 'not-checked')
  const built = signatures.some(({ as, who }) => as === 'builder' && who === person.who)
  const sign = (as: 'builder' | 'checker') =>
    void write(folded.id, [stepSigned({ step: WHOLE_UNIT, as })], words.signed)
  return (
    <section class="card stack stack--tight">
      <h2>{words.signatures}</h2>
      {signatures.length === 0 ? (
        <p class="quiet">{words.noSignature}</p>
      ) : (
        <ul class="lines">
          {signatures.map(({ event, as, who, at }) => (
            <li key={event} class="signature">
              <Icon name={stale && as === 'checker' ? 'warning' : 'tick'} size={20} />
              <span class="open__words">
                <strong>{words.signedAs[as]}</strong>{' '}
                <span dir="auto">{words.signedBy(nameOf(who), sayWhen(at, Date.now(), place))}</span>
                {stale && as === 'checker' && <span class="quiet open__more">{words.stale}</span>}
              </span>
            </li>
          ))}
        </ul>
      )}
      {alone ? (
        <p>{words.alone}</p>
      ) : (
        lacks && (
          <>
            <p>{may === 'role' ? words.noChecker : may === 'worked-here' ? words.workedHere : words.checkerWhat}</p>
            {person.role === UNKNOWN && <p>{words.whoUnknown}</p>}
            {person.role !== null && person.people === null && <p class="quiet">{words.peopleUnknown}</p>}
          </>
        )
      )}
      {!isReleased && (
        <div class="buttons">
          {!alone && lacks && may === 'yes' && (
            <button type="button" class="button button--act" onClick={() => sign('checker')}>
              <Icon name="tick" />
              {words.signChecker}
            </button>
          )}
          {!built && hasWorked(folded, person.who) && person.role !== 'viewer' && (
            <button type="button" class="button" onClick={() => sign('builder')}>
              {words.signBuilder}
            </button>
          )}
        </div>
      )}
    </section>
  )
}
