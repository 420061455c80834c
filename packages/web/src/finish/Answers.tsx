/** A unit that came back: the complaint, and what the record of its build answers. */
import { NONE, trayOf } from '@gripbook/print'
import type { FoldedUnit } from '@gripbook/record'
import { useMemo } from 'preact/hooks'
import { namesOf } from '../face/kindNames.ts'
import { Icon, type IconName } from '../look/icons.tsx'
import { useNames } from '../unit/useNames.ts'
import { words } from '../words/finish.ts'
import { words as all } from '../words/index.ts'
import { type Answer, answersOf, builtUnit } from './comeBack.ts'
import { figureText } from './figures.ts'

const SIGNS: Record<Answer['is'], IconName> = {
  figure: 'measure',
  override: 'warning',
  'kind changed': 'swap',
  'part changed': 'part',
  'by feel': 'turns',
  resistance: 'warning',
  'came back': 'undo',
  'since release': 'list',
}

export function Answers({ folded, complaint }: { folded: FoldedUnit; complaint: string }) {
  const built = useMemo(() => builtUnit(folded), [folded])
  const answers = useMemo(() => (built === null ? [] : answersOf(built, complaint, folded)), [built, complaint, folded])
  const nameOf = useNames()
  if (built === null) return null
  return (
    <section class="card stack stack--tight">
      <h2>{words.answersTitle}</h2>
      {answers.length === 0 ? (
        <p>{words.noAnswers}</p>
      ) : (
        <>
          <p class="quiet">{words.answersWhat}</p>
          <ul class="lines">
            {answers.map((answer, i) => (
              <li key={i} class={`answer${answer.speaksOf ? ' answer--speaks' : ''}`}>
                <Icon name={SIGNS[answer.is]} size={20} />
                <span class="open__words" dir="auto">
                  {answer.speaksOf && <strong class="answer__speaks">{words.speaksOf}</strong>}
                  {sayAnswer(answer, built, nameOf)}
                </span>
              </li>
            ))}
          </ul>
        </>
      )}
      <p class="quiet">{words.noTakes}</p>
    </section>
  )
}

function sayAnswer(answer: Answer, built: FoldedUnit, nameOf: (who: string) => string): string {
  const face = (id: string) => built.unit.faces.find((one) => one.id === id)?.name ?? id
  const where = (id: string, hole: string) => words.holeOf(hole, face(id))
  switch (answer.is) {
    case 'figure': {
      const { before, during, after, reading, waived } = answer.row
      const last = after ?? during
      const figures = words.fromTo(before && figureText(before), last && figureText(last))
      return words.figure(reading, figures, answer.why, waived?.reason ?? null)
    }
    case 'override':
      return words.override(
        answer.gate,
        answer.face === null ? null : face(answer.face),
        answer.holes,
        answer.reason,
        nameOf(answer.who),
      )
    case 'kind changed': {
      const named = kindNames(built, answer.face)
      return words.kindChanged(where(answer.face, answer.hole), named(answer.found), named(answer.placed))
    }
    case 'part changed': {
      const name =
        answer.name in all.parts.whats ? all.parts.whats[answer.name as keyof typeof all.parts.whats] : answer.name
      return words.partChanged(name, answer.fate, answer.by)
    }
    case 'by feel':
      return words.byFeel(face(answer.face), answer.holes)
    case 'resistance':
      return words.felt(where(answer.face, answer.hole), answer.said)
    case 'came back':
      return words.cameBackBefore(answer.complaint, answer.found)
    case 'since release':
      return words.afterRelease(answer.said)
  }
}

function kindNames({ unit }: FoldedUnit, id: string): (kind: string) => string {
  const face = unit.faces.find((one) => one.id === id)
  const { long } = namesOf(face === undefined ? [] : [...trayOf(unit, face).values()])
  return (kind) => (kind === NONE ? words.emptyHole : (long.get(kind) ?? kind))
}
