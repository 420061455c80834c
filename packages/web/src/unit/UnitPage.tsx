/** A unit: what it is, its faces and how each stands, its photographs; what two devices say differently stands first. */
import type { FoldedUnit } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { later } from '../app/later.tsx'
import { Shell } from '../app/Shell.tsx'
import { useUnit } from '../app/useUnit.ts'
import { Icon } from '../look/icons.tsx'
import { Foot } from '../units/Foot.tsx'
import { Go } from '../units/Go.tsx'
import { words } from '../words/index.ts'
import { Clashes } from './Clashes.tsx'
import { FaceCard } from './FaceCard.tsx'
import { FaceSheet } from './FaceSheet.tsx'
import { FirstSteps } from './FirstSteps.tsx'
import { HandOn } from './HandOn.tsx'
import { NotHere } from './NotHere.tsx'
import { Photographs } from './Photographs.tsx'
import { signsOf } from './photographs.ts'
import { UnitSheet } from './UnitSheet.tsx'
import './UnitPage.css'

const BackNote = later(() => import('../finish/BackNote.tsx').then((part) => part.BackNote))
const WhatNext = later(() => import('../finish/WhatNext.tsx').then((part) => part.WhatNext))

type Open = { sheet: 'unit' } | { sheet: 'hand on' } | { sheet: 'new face' } | { sheet: 'face'; face: string }

export function UnitPage({ unit }: { unit: string }) {
  const folded = useUnit(unit)
  if (folded === null) return <p class="starting">{words.shell.opening}</p>
  if (folded.entries.length === 0) return <NotHere />
  return <OpenUnit folded={folded} />
}

function OpenUnit({ folded }: { folded: FoldedUnit }) {
  const { book } = useApp()
  const [open, setOpen] = useState<Open | null>(null)
  const close = () => setOpen(null)
  const { faces } = folded.unit
  const changed = open?.sheet === 'face' ? faces.find(({ id }) => id === open.face) : undefined
  return (
    <Shell title={folded.unit.name ?? words.unit.noName}>
      <div class="unit sides">
        <div>
          {book.name === 'practice' && <FirstSteps folded={folded} />}
          <Clashes folded={folded} />
          {folded.work.cameBack !== undefined && <BackNote folded={folded} />}
          <About folded={folded} onChange={() => setOpen({ sheet: 'unit' })} />
          <Further folded={folded} />
        </div>
        <div>
          <section class="stack stack--tight">
            <h2>{words.unit.faces}</h2>
            {faces.length === 0 ? (
              <div class="empty">
                <h3>{words.unit.noFaces}</h3>
                <p>{words.unit.noFacesWhat}</p>
              </div>
            ) : (
              <ul class="stack stack--tight">
                {faces.map((face) => (
                  <li key={face.id}>
                    <FaceCard
                      folded={folded}
                      face={face}
                      book={book.name}
                      onChange={() => setOpen({ sheet: 'face', face: face.id })}
                    />
                  </li>
                ))}
              </ul>
            )}
          </section>
          <WhatNext folded={folded} />
          <Photographs folded={folded} />
          <button type="button" class="button" onClick={() => setOpen({ sheet: 'hand on' })}>
            <Icon name="folder" />
            {words.unit.handOn}
          </button>
        </div>
      </div>
      <Foot>
        <button type="button" class="button button--act" onClick={() => setOpen({ sheet: 'new face' })}>
          <Icon name="plus" />
          {words.unit.addFace}
        </button>
      </Foot>
      {open?.sheet === 'unit' && <UnitSheet folded={folded} onClose={close} />}
      {open?.sheet === 'hand on' && <HandOn folded={folded} onClose={close} />}
      {open?.sheet === 'new face' && <FaceSheet folded={folded} onClose={close} />}
      {changed !== undefined && <FaceSheet key={changed.id} folded={folded} face={changed} onClose={close} />}
    </Shell>
  )
}

function About({ folded, onChange }: { folded: FoldedUnit; onChange: () => void }) {
  const { unit, work, sinceRelease } = folded
  const signs = signsOf(folded)
  const history = unit.history === undefined ? undefined : words.unit.histories[unit.history]
  const known = [work.complaint, work.model, work.job, unit.history, unit.note, signs[0]].some(
    (value) => value !== undefined,
  )
  return (
    <section class="card stack stack--tight">
      <div class="unit__head">
        <h2>{words.unit.about}</h2>
        <button type="button" class="button" onClick={onChange}>
          {words.unit.change}
        </button>
      </div>
      {work.released !== undefined && (
        <p class="sign sign--fits">
          <Icon name="tick" />
          {words.unit.released}
        </p>
      )}
      {sinceRelease.length > 0 && (
        <p class="sign sign--cannot">
          <Icon name="warning" />
          {words.unit.sinceRelease(sinceRelease.length)}
        </p>
      )}
      {!known && <p class="quiet">{words.unit.nothingKnown}</p>}
      <dl class="facts">
        <Fact name={words.unit.complaint} value={work.complaint?.value} />
        <Fact name={words.unit.model} value={work.model?.value} />
        <Fact name={words.unit.job} value={work.job?.value} />
        <Fact name={words.unit.history} value={[history, ...signs].filter((text) => text !== undefined).join('\n')} />
        <Fact name={words.unit.note} value={unit.note} />
      </dl>
    </section>
  )
}

function Fact({ name, value }: { name: string; value: string | undefined }) {
  if (value === undefined || value === '') return null
  return (
    <div>
      <dt class="quiet">{name}</dt>
      <dd dir="auto">{value}</dd>
    </div>
  )
}

/** What else the book has of the unit. */
function Further({ folded }: { folded: FoldedUnit }) {
  const { book } = useApp()
  const at = { book: book.name, unit: folded.id }
  const figures = new Set([...Object.keys(folded.things.reading), ...Object.keys(folded.things.limit)])
  return (
    <nav class="further" aria-label={words.unit.further}>
      <Go to={{ at: 'parts', ...at }} class="further__link">
        <Icon name="part" />
        <span class="further__words">
          <strong>{words.unit.parts}</strong>
          <span class="quiet">{words.unit.partsCount(Object.keys(folded.things.part).length)}</span>
        </span>
      </Go>
      <Go to={{ at: 'figures', ...at }} class="further__link">
        <Icon name="measure" />
        <span class="further__words">
          <strong>{words.unit.figures}</strong>
          <span class="quiet">{words.unit.figuresCount(figures.size)}</span>
        </span>
      </Go>
      <Go to={{ at: 'finish', ...at }} class="further__link">
        <Icon name="tick" />
        <span class="further__words">
          <strong>{words.unit.finish}</strong>
          <span class="quiet">{words.unit.finishWhat(folded.work.released !== undefined)}</span>
        </span>
      </Go>
      <Go to={{ at: 'story', ...at }} class="further__link">
        <Icon name="list" />
        <span class="further__words">
          <strong>{words.unit.story}</strong>
          <span class="quiet">{words.unit.storyCount(folded.entries.length)}</span>
        </span>
      </Go>
    </nav>
  )
}
