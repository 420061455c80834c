/** Everything beside the bolts that came out, by face: what it is, where it sat, and which way round in big type. */
import type { FoldedUnit } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { Shell } from '../app/Shell.tsx'
import { useUnit } from '../app/useUnit.ts'
import { Icon } from '../look/icons.tsx'
import { Caution } from '../parts/Caution.tsx'
import { Foot } from '../units/Foot.tsx'
import { words } from '../words/index.ts'
import { NotHere } from './NotHere.tsx'
import { PartSheet } from './PartSheet.tsx'
import { Picture } from './Picture.tsx'
import { byFace, type Part, partsOf } from './partForm.ts'
import './PartsPage.css'

export function PartsPage({ unit }: { unit: string }) {
  const folded = useUnit(unit)
  if (folded === null) return <p class="starting">{words.shell.opening}</p>
  if (folded.entries.length === 0) return <NotHere />
  return <OpenParts folded={folded} />
}

function OpenParts({ folded }: { folded: FoldedUnit }) {
  const [open, setOpen] = useState<'new' | { part: string } | null>(null)
  const parts = partsOf(folded)
  const groups = byFace(parts, folded.unit.faces)
  const changed = open === null || open === 'new' ? undefined : parts.find(({ id }) => id === open.part)
  const close = () => setOpen(null)
  return (
    <Shell title={words.parts.title} over={folded.unit.name ?? words.unit.noName}>
      <div class="parts">
        <Caution name="springs" words={words.parts.cautionSpring} seen={words.parts.cautionSeen} />
        <Caution name="battery" words={words.parts.cautionBattery} seen={words.parts.cautionSeen} />
        {parts.length === 0 && (
          <div class="empty">
            <h2>{words.parts.emptyTitle}</h2>
            <p>{words.parts.emptyWhat}</p>
          </div>
        )}
        {groups.map(({ face, parts: here }) => (
          <section key={face ?? ''} class="stack stack--tight">
            <h2 dir="auto">{faceName(folded, face)}</h2>
            <ul class="parts__list">
              {here.map((part) => (
                <li key={part.id}>
                  <PartCard part={part} onOpen={() => setOpen({ part: part.id })} />
                </li>
              ))}
            </ul>
          </section>
        ))}
      </div>
      <Foot>
        <button type="button" class="button button--act" onClick={() => setOpen('new')}>
          <Icon name="plus" />
          {words.parts.add}
        </button>
      </Foot>
      {open === 'new' && <PartSheet folded={folded} onClose={close} />}
      {changed !== undefined && <PartSheet key={changed.id} folded={folded} part={changed} onClose={close} />}
    </Shell>
  )
}

function PartCard({ part, onOpen }: { part: Part; onOpen: () => void }) {
  const where = [part.hole === undefined ? undefined : words.parts.atHole(part.hole), part.place]
  const about = [...where, part.condition].filter((text) => text !== undefined)
  return (
    <button type="button" class={`part${part.photograph === undefined ? ' part--plain' : ''}`} onClick={onOpen}>
      {part.photograph !== undefined && <Picture photograph={part.photograph} alt="" />}
      <span class="part__words">
        <span dir="auto">
          {part.count !== undefined && part.count > 1 && `${words.parts.times(part.count)} `}
          {part.name === undefined ? words.parts.whats[part.what] : part.name}
        </span>
        {part.wayRound !== undefined && (
          <span class="part__round" dir="auto">
            {part.wayRound}
          </span>
        )}
        {about.length > 0 && (
          <span class="quiet" dir="auto">
            {about.join(' · ')}
          </span>
        )}
        {part.fate !== 'out' && (
          <span class="sign sign--fits quiet">
            <Icon name="tick" size={18} />
            {words.parts.fates[part.fate] ?? part.fate}
          </span>
        )}
      </span>
    </button>
  )
}

function faceName({ unit }: FoldedUnit, face: string | null): string {
  return unit.faces.find(({ id }) => id === face)?.name ?? face ?? words.parts.otherFaces
}
