/** The way to the bench from the face: how far the hands are, and where the work was left. */
import type { FoldedUnit } from '@gripbook/record'
import { useMemo } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { type BookName, pathOf, type Route } from '../app/route.ts'
import { Icon } from '../look/icons.tsx'
import { useNames } from '../unit/useNames.ts'
import { sayWhen } from '../units/when.ts'
import { language, words } from '../words/index.ts'
import { leftAt } from './left.ts'
import { benchSteps, nextOf, roundMates } from './round.ts'
import './BenchLink.css'

type Props = { folded: FoldedUnit; face: string; book: BookName }

export function BenchLink({ folded, face, book }: Props) {
  const { go } = useApp()
  const nameOf = useNames()
  const steps = useMemo(() => benchSteps(folded, face), [folded, face])
  if (steps.length === 0) return null
  const next = nextOf(steps)
  const begun = steps.some(({ done }) => done !== null)
  const left = leftAt(folded, face)
  const felt = Object.entries(folded.faces[face]?.holes ?? {}).find(([, { resistance }]) => resistance !== undefined)
  const to: Route = { at: 'bench', book, unit: folded.id, face }
  const mates = next === null ? [] : roundMates(steps, next)
  const done = mates.filter((one) => one.done !== null).length
  const line =
    felt !== undefined
      ? words.face.benchStopped(felt[0])
      : next === null
        ? words.face.benchDone
        : !begun
          ? words.face.benchNew
          : next.hole === null
            ? words.face.benchClose
            : words.face.benchAt(words.face.benchRounds[next.round.what], done, mates.length)
  return (
    <a
      class={`bench-link${felt === undefined ? '' : ' bench-link--stopped'}`}
      href={pathOf(to)}
      onClick={(event) => {
        event.preventDefault()
        go(to)
      }}
    >
      <Icon name={felt === undefined ? (next === null ? 'tick' : 'turns') : 'warning'} size={28} />
      <span class="bench-link__words">
        <b>{begun && next !== null ? words.face.benchOn : words.face.bench}</b>
        <span class="quiet">{line}</span>
        {left !== null && (
          <span class="quiet" dir="auto">
            {words.face.benchLeft(nameOf(left.who), sayWhen(left.at, Date.now(), { language }), left.hole)}
          </span>
        )}
      </span>
      <Icon name="forth" />
    </a>
  )
}
