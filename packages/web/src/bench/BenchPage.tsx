/** The bench mode: one step of the hands fills the screen, on the face that is put together. */

import { useApp } from '../app/context.ts'
import type { Route } from '../app/route.ts'
import { Shell } from '../app/Shell.tsx'
import { useUnit } from '../app/useUnit.ts'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/bench.ts'
import { words as shared } from '../words/index.ts'
import { AtBench } from './AtBench.tsx'
import { benchSteps } from './round.ts'
import { useTight } from './useTight.ts'
import './BenchPage.css'

type Props = Extract<Route, { at: 'bench' }>

export function BenchPage(route: Props) {
  const folded = useUnit(route.unit)
  const tight = useTight()
  if (folded === null) return <p class="starting">{shared.shell.opening}</p>
  const face = folded.unit.faces.find(({ id }) => id === route.face)
  if (face === undefined)
    return (
      <Shell title={shared.face.noFace}>
        <p class="column">{shared.face.noFaceWhat}</p>
      </Shell>
    )
  const name = face.name ?? face.id
  const steps = benchSteps(folded, face.id)
  if (tight && steps.length > 0)
    return (
      <div class="shell shell--filled">
        <main class="shell__main">
          <h1 class="unseen">{words.pageOf(name)}</h1>
          <AtBench folded={folded} face={face} book={route.book} tight />
        </main>
      </div>
    )
  return (
    <Shell title={name} over={words.title} filled>
      {steps.length === 0 ? (
        <NoHoles {...route} />
      ) : (
        <AtBench folded={folded} face={face} book={route.book} tight={false} />
      )}
    </Shell>
  )
}

function NoHoles({ book, unit, face }: Props) {
  const { go } = useApp()
  return (
    <div class="column">
      <div class="empty">
        <h2>{words.noHoles}</h2>
        <p>{words.noHolesWhat}</p>
        <button type="button" class="button button--act" onClick={() => go({ at: 'face', book, unit, face })}>
          <Icon name="mark" />
          {words.toFace}
        </button>
      </div>
    </div>
  )
}
