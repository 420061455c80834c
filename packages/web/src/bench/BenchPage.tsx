/** The bench mode: one step of the hands fills the screen, on the face that is put together. */

import type { Route } from '../app/route.ts'
import { Shell } from '../app/Shell.tsx'
import { useUnit } from '../app/useUnit.ts'
import { NeedsHoles } from '../face/NeedsHoles.tsx'
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
  const bare = tight && steps.length > 0
  // One screen in both, so that nothing that is open goes when the device is turned.
  return (
    <Shell title={bare ? words.pageOf(name) : name} over={words.title} filled bare={bare}>
      {steps.length === 0 ? (
        <NeedsHoles title={words.noHoles} what={words.noHolesWhat} book={route.book} unit={route.unit} face={face.id} />
      ) : (
        <AtBench folded={folded} face={face} book={route.book} tight={tight} />
      )}
    </Shell>
  )
}
