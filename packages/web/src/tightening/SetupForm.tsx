/** What the sums must know of the cover: three things, and more for who has them at hand. */
import type { Face, Point } from '@gripbook/engine'
import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { TextField } from '../parts/Field.tsx'
import { words as shared } from '../words/index.ts'
import { words } from '../words/tightening.ts'
import type { Draft, DraftFault, FaultPlace } from './draft.ts'
import { AREAS, type Area, cornersOf, leastCorners, type Target } from './drawn.ts'
import type { Placed } from './faultPlace.ts'
import { BED_STIFFNESS, BEDS, ELASTIC, MATERIALS, SURFACES } from './materials.ts'
import { OrderFields } from './OrderFields.tsx'
import { asThinAsInches } from './thickness.ts'
import { WithUnit } from './WithUnit.tsx'

type Props = {
  face: Face
  draft: Draft
  faults: readonly DraftFault[]
  found: readonly Placed[]
  margin: number
  told: boolean
  tapping: number | null
  onChange: (draft: Draft) => void
  onDraw: (target: Target) => void
  onRemove: (target: { at: Area; index: number }) => void
  onFromMarks: (() => void) | null
  onTapping: (pass: number | null) => void
  onKeep: () => void
}

/** Its button lies outside of it, where the thumb is. */
export const FORM_ID = 'cover-form'

export function SetupForm(props: Props) {
  const { draft, face, told, onChange, onKeep } = props
  const { settings } = useApp()
  const set = (change: Partial<Draft>) => onChange({ ...draft, ...change })
  const at = (place: FaultPlace, index?: number) => faultAt(props, place, index)
  const thin = asThinAsInches(draft.thickness, settings.length)
  const more = [...AREAS, 'clamp', 'boltStiffness', 'passes'] as const
  const [open, setOpen] = useState(() => hasMore(draft))
  const shown = open || more.some((place) => props.faults.some((fault) => fault.at === place))
  return (
    <form
      id={FORM_ID}
      class="stack cover-form"
      onSubmit={(event) => {
        event.preventDefault()
        onKeep()
      }}
    >
      {!told && (
        <div>
          <h2>{words.setUp}</h2>
          <p class="quiet">{words.setUpWhat}</p>
        </div>
      )}
      <Outline {...props} />
      <WithUnit
        label={words.thickness}
        unit={settings.length}
        value={draft.thickness}
        hint={thin === null ? words.thicknessHint : words.thicknessThin(thin, draft.thickness.trim())}
        fault={at('thickness')}
        onInput={(thickness) => set({ thickness })}
      />
      <div class="stack stack--tight">
        <Choice
          label={words.material}
          options={[...MATERIALS, 'own' as const].map((value) => ({ value, words: words.materials[value] }))}
          value={draft.material}
          onChoose={(material) => set({ material })}
        />
        {draft.material === 'own' ? (
          <div class="row">
            <WithUnit
              label={words.young}
              unit="MPa"
              value={draft.young}
              fault={at('young')}
              onInput={(young) => set({ young })}
            />
            <TextField
              label={words.poisson}
              value={draft.poisson}
              fault={at('poisson')}
              onInput={(poisson) => set({ poisson })}
              input={{ inputMode: 'decimal' }}
            />
          </div>
        ) : (
          <p class="quiet">{words.elastic(ELASTIC[draft.material].young, ELASTIC[draft.material].poisson)}</p>
        )}
      </div>
      <div class="stack stack--tight">
        <Choice
          label={words.bed}
          options={[...BEDS, 'own' as const].map((value) => ({ value, words: words.beds[value] }))}
          value={draft.bed}
          onChoose={(bed) => set({ bed })}
        />
        {draft.bed !== null && draft.bed !== 'own' && (
          <p class="quiet">
            {words.bedRange(
              BED_STIFFNESS[draft.bed].atLeast,
              BED_STIFFNESS[draft.bed].atMost,
              BED_STIFFNESS[draft.bed].thickness,
            )}
          </p>
        )}
        {draft.bed === 'own' && (
          <WithUnit
            label={words.stiffness}
            unit="N/mm³"
            value={draft.stiffness}
            hint={words.stiffnessHint}
            fault={at('stiffness')}
            onInput={(stiffness) => set({ stiffness })}
          />
        )}
        <FaultLine>{at('bed')}</FaultLine>
      </div>
      <details class="hole-list" open={shown} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary class="button">
          <Icon name="more" />
          {words.more}
        </summary>
        <div class="stack">
          <OrderFields
            face={face}
            draft={draft}
            tapping={props.tapping}
            faultAt={(index) => at('passes', index)}
            onChange={onChange}
            onTapping={props.onTapping}
          />
          <Areas {...props} />
          <Tick checked={draft.snug} words={words.snug} hint={words.snugHint} onChange={(snug) => set({ snug })} />
          <div class="row">
            <WithUnit
              label={words.clamp}
              unit="N"
              value={draft.clamp}
              hint={words.clampHint(face.torque !== undefined)}
              fault={at('clamp')}
              onInput={(clamp) => set({ clamp })}
            />
            <WithUnit
              label={words.boltStiffness}
              unit="N/mm"
              value={draft.boltStiffness}
              hint={words.boltStiffnessHint}
              fault={at('boltStiffness')}
              onInput={(boltStiffness) => set({ boltStiffness })}
            />
          </div>
          <Choice
            label={words.surface}
            options={[
              { value: 'none' as const, words: words.surfaceNone },
              ...SURFACES.map((value) => ({ value, words: words.surfaces[value] })),
            ]}
            value={draft.surface ?? 'none'}
            onChoose={(surface) => set({ surface: surface === 'none' ? null : surface })}
          />
        </div>
      </details>
    </form>
  )
}

type BarProps = { told: boolean; faults: readonly DraftFault[]; onCancel: () => void }

/** What ends the form, and what is still lacking in it. */
export function SetupBar({ told, faults, onCancel }: BarProps) {
  return (
    <nav class={`face__bar tightening__bar${told ? '' : ' tightening__bar--one'}`} aria-label={words.setUp}>
      <FaultLine>{faults.length === 0 ? '' : words.notYet([...new Set(faults.map(({ at }) => at))])}</FaultLine>
      {told && (
        <button type="button" class="button" onClick={onCancel}>
          {shared.shell.cancel}
        </button>
      )}
      <button type="submit" form={FORM_ID} class="button button--act">
        <Icon name="tick" />
        {told ? words.keepChanges : words.workOut}
      </button>
    </nav>
  )
}

function Outline({ draft, faults, found, margin, onDraw, onFromMarks }: Props) {
  const { settings } = useApp()
  const drawn = draft.outline.length >= 3
  const [wide, high] = sizeOf(draft.outline)
  const said = faults.some(({ at }) => at === 'outline') ? [words.draftFaults['no corners']] : []
  const computed = found.filter(({ at }) => at === 'outline' || at === 'holes').map((fault) => fault.words)
  return (
    <fieldset class="stack stack--tight">
      <legend class="field__label">{words.outline}</legend>
      {drawn && (
        <p>
          {words.outlineIs(draft.outline.length, words.far(wide, settings.length), words.far(high, settings.length))}
        </p>
      )}
      <div class="buttons buttons--even">
        {!drawn && onFromMarks !== null && (
          <button type="button" class="button button--act" onClick={onFromMarks}>
            <Icon name="outline" />
            {words.fromMarks}
          </button>
        )}
        <button type="button" class="button" onClick={() => onDraw({ at: 'outline' })}>
          <Icon name="mark" />
          {drawn ? words.editOutline : words.drawOutline}
        </button>
      </div>
      {!drawn && onFromMarks !== null && <p class="quiet">{words.fromMarksWhat(words.far(margin, settings.length))}</p>}
      {[...said, ...computed].map((fault) => (
        <FaultLine key={fault}>{fault}</FaultLine>
      ))}
    </fieldset>
  )
}

function Areas(props: Props) {
  const { draft, onChange, onDraw, onRemove } = props
  const { settings } = useApp()
  return (
    <fieldset class="stack stack--tight">
      <legend class="field__label">{words.draw}</legend>
      <ul class="stack stack--tight">
        {AREAS.flatMap((area) =>
          draft[area].map((_, index) => {
            const name = words.areaNumber(area, index)
            const count = cornersOf(draft, { at: area, index }).length
            return (
              <li key={`${area} ${index}`} class="drawn-area">
                <div class="drawn-area__line">
                  <p>
                    <b>{name}</b>
                    <span class="quiet">
                      {' '}
                      {area === 'lines' || count < leastCorners({ at: area, index }) ? '' : words.corners(count)}
                    </span>
                  </p>
                  <button
                    type="button"
                    class="button"
                    aria-label={words.editArea(name)}
                    onClick={() => onDraw({ at: area, index })}
                  >
                    <Icon name="outline" />
                  </button>
                  <button
                    type="button"
                    class="button"
                    aria-label={words.removeArea(name)}
                    onClick={() => onRemove({ at: area, index })}
                  >
                    <Icon name="cross" />
                  </button>
                </div>
                {area === 'regions' && (
                  <WithUnit
                    label={words.areaThickness(name)}
                    unit={settings.length}
                    value={draft.regions[index]!.thickness}
                    fault=""
                    onInput={(thickness) =>
                      onChange({ ...draft, regions: changed(draft.regions, index, { thickness }) })
                    }
                  />
                )}
                {area === 'lines' && (
                  <TextField
                    label={words.lineName(name)}
                    hint={words.lineNameHint}
                    value={draft.lines[index]!.name}
                    onInput={(line) => onChange({ ...draft, lines: changed(draft.lines, index, { name: line }) })}
                    input={{ maxLength: 300 }}
                  />
                )}
                <FaultLine>{faultAt(props, area, index)}</FaultLine>
              </li>
            )
          }),
        )}
      </ul>
      <ul class="stack stack--tight">
        {AREAS.map((area) => (
          <li key={area} class="area-add">
            <button type="button" class="button" onClick={() => onDraw({ at: area, index: draft[area].length })}>
              <Icon name="plus" />
              {words.areaAdd[area]}
            </button>
            <p class="quiet">{words.areaWhat[area]}</p>
          </li>
        ))}
      </ul>
    </fieldset>
  )
}

type TickProps = { checked: boolean; words: string; hint: string; onChange: (checked: boolean) => void }

function Tick({ checked, words: label, hint, onChange }: TickProps) {
  return (
    <div>
      <label class="tick">
        <input type="checkbox" checked={checked} onChange={(event) => onChange(event.currentTarget.checked)} />
        {label}
      </label>
      <p class="quiet">{hint}</p>
    </div>
  )
}

function FaultLine({ children }: { children: ComponentChildren }) {
  return (
    <p class="field__fault" role="alert">
      {children}
    </p>
  )
}

/** What is wrong there, by the form or by the sums; empty: nothing. */
function faultAt({ faults, found }: Props, at: FaultPlace, index?: number): string {
  const here = (fault: { at: FaultPlace; index?: number }) => fault.at === at && fault.index === index
  const own = faults.find(here)
  if (own !== undefined) return sayDraftFault(own)
  return found.find(here)?.words ?? ''
}

function sayDraftFault(fault: DraftFault): string {
  if (fault.code !== 'sequence') return words.draftFaults[fault.code]
  return 'unknown' in fault.fault ? words.unknownHole(fault.fault.unknown) : words.holeTwice(fault.fault.twice)
}

function hasMore({ openings, hollows, regions, lines, passes, clamp, boltStiffness, surface, snug }: Draft): boolean {
  const drawn = openings.length + hollows.length + regions.length + lines.length + passes.length > 0
  return drawn || clamp !== '' || boltStiffness !== '' || surface !== null || !snug
}

function changed<T>(list: readonly T[], index: number, change: Partial<T>): T[] {
  return list.map((one, i) => (i === index ? { ...one, ...change } : one))
}

/** Width and height in mm. */
function sizeOf(corners: readonly Point[]): [number, number] {
  if (corners.length === 0) return [0, 0]
  const span = (axis: 0 | 1) =>
    Math.max(...corners.map((corner) => corner[axis])) - Math.min(...corners.map((corner) => corner[axis]))
  return [span(0), span(1)]
}
