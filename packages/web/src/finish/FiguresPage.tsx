/** Figures of the unit before teardown and after, side by side against their limits; entered one after the other as a gauge types. */
import { type FoldedUnit, figureTaken } from '@gripbook/record'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Shell } from '../app/Shell.tsx'
import { useUnit } from '../app/useUnit.ts'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { TextField } from '../parts/Field.tsx'
import { useTyped } from '../parts/useTyped.ts'
import { useTypedFigure } from '../parts/useTypedFigure.ts'
import { FigurePad, KeysSwitch } from '../readings/FigurePad.tsx'
import { InstrumentButton, InstrumentSheet } from '../readings/Instrument.tsx'
import { NotHere } from '../unit/NotHere.tsx'
import { given, oneLine } from '../units/texts.ts'
import { words } from '../words/finish.ts'
import { words as all } from '../words/index.ts'
import { AddFigure, type Draft } from './AddFigure.tsx'
import { FigureTable, limitText } from './FigureTable.tsx'
import {
  type Figure,
  figureOf,
  figureText,
  lies,
  nextToTake,
  type Row,
  rowsOf,
  STAGES,
  type Stage,
  stageOf,
} from './figures.ts'
import { LimitSheet } from './LimitSheet.tsx'
import { isLength, notedWith, usedFor } from './measuredWith.ts'
import { WaiveSheet } from './WaiveSheet.tsx'
import '../readings/station.css'
import './FiguresPage.css'

export function FiguresPage({ unit }: { unit: string }) {
  const folded = useUnit(unit)
  if (folded === null) return <p class="starting">{all.shell.opening}</p>
  if (folded.entries.length === 0) return <NotHere />
  return <OpenFigures folded={folded} />
}

type Kept = { reading: string; stage: Stage; figure: Figure; outside: string | null }

function OpenFigures({ folded }: { folded: FoldedUnit }) {
  const { settings, choose, write } = useApp()
  // Figures that were taken up and not read yet, each as JSON.
  const taken = useTyped(`figures ${folded.id}`, { drafts: [] as readonly string[] })
  const drafts = useMemo(() => taken.typed.drafts.map((draft) => JSON.parse(draft) as Draft), [taken.typed.drafts])
  const rows = useMemo(() => withDrafts(rowsOf(folded), drafts), [folded, drafts])
  const figure = useTypedFigure(`figure typed ${folded.id}`, { text: '', reading: '', stage: '', conditions: '' })
  const { begun, text } = figure
  const [stage, setStage] = useState<Stage>(() => STAGES.find((one) => one === begun?.stage) ?? stageOf(folded))
  const [picked, setPicked] = useState<string | null>(
    () => rows.find(({ reading }) => reading === begun?.reading)?.reading ?? nextToTake(rows, stage, null),
  )
  const [sheet, setSheet] = useState<'add' | 'limit' | 'waive' | 'instrument' | null>(null)
  const [fault, setFault] = useState('')
  const [conditions, setConditions] = useState(begun?.conditions ?? '')
  const setText = (typed: string) => figure.setText(typed, { reading: picked ?? '', stage, conditions })
  const [last, setLast] = useState<Kept | null>(null)
  const input = useRef<HTMLInputElement>(null)
  const dock = useRef<HTMLElement>(null)
  const row = rows.find(({ reading }) => reading === picked) ?? null
  const faceName = (id: string) => folded.unit.faces.find((face) => face.id === id)?.name ?? id

  useEffect(() => {
    if (sheet === null) input.current?.focus({ preventScroll: true })
  }, [picked, stage, sheet])

  function pick(reading: string | null) {
    setPicked(reading)
    setText('')
    setFault('')
  }

  function drop(reading: string) {
    taken.type({ drafts: taken.typed.drafts.filter((draft) => (JSON.parse(draft) as Draft).reading !== reading) })
    pick(nextToTake(rows, stage, reading))
  }

  function pickInTable(reading: string) {
    pick(reading)
    dock.current?.scrollIntoView({ block: 'nearest' })
  }

  async function keep(typed: string) {
    if (row === null || typed.trim() === '') return
    const taken = figureOf(typed, row.unit)
    if (taken === null) {
      setText(typed)
      return setFault(words.notFigure(typed.trim()))
    }
    const noted = notedWith(taken, usedFor(row.reading), settings)
    const body = {
      reading: row.reading,
      when: stage,
      ...noted,
      ...(row.face === null ? {} : { face: row.face }),
      ...given('conditions', oneLine(conditions)),
    }
    const outside = lies(noted, row.limit) === 'outside' && row.limit !== null ? limitText(row.limit) : null
    pick(nextToTake(rows, stage, row.reading))
    const written = await write(folded.id, [figureTaken(body)], words.kept(row.reading, stage, figureText(noted)))
    if (written !== null) return setLast({ reading: row.reading, stage, figure: noted, outside })
    setPicked(row.reading)
    setText(typed)
  }

  return (
    <Shell title={words.figuresTitle} over={folded.unit.name ?? all.unit.noName}>
      <div class="readings">
        <div class="readings__head">
          <Choice
            label={words.stage}
            quiet
            options={STAGES.map((value) => ({ value, words: words.stages[value] }))}
            value={stage}
            onChoose={(next) => {
              setStage(next)
              pick(nextToTake(rows, next, null) ?? picked)
            }}
          />
        </div>
        <div class="station station--figures">
          <div class="station__around">
            {rows.length === 0 ? (
              <div class="empty">
                <h2>{words.noFigures}</h2>
                <p>{words.figuresWhat}</p>
              </div>
            ) : (
              <FigureTable rows={rows} faceName={faceName} current={picked} onPick={pickInTable} />
            )}
            <div class="buttons">
              <button
                type="button"
                class={`button${rows.length === 0 ? ' button--act' : ''}`}
                onClick={() => setSheet('add')}
              >
                <Icon name="plus" />
                {words.addFigure}
              </button>
            </div>
            <div role="status">
              {last?.outside != null && (
                <p class="caution">
                  <Icon name="warning" />
                  <span dir="auto">{words.isOutside(last.reading, last.outside)}</span>
                </p>
              )}
            </div>
            {row !== null && (
              <div class="station__switch">
                <KeysSwitch />
              </div>
            )}
          </div>
          {rows.length > 0 && (
            <section ref={dock} class="station__dock" aria-label={words.now}>
              {row === null ? (
                <>
                  <p class="station__spot">{words.allRead}</p>
                  <p class="quiet">{words.allReadWhat}</p>
                </>
              ) : (
                <>
                  <div class="station__now">
                    <div class="station__what">
                      <p class="station__label quiet">{words.stages[stage]}</p>
                      <p class="station__spot" dir="auto">
                        {row.reading}
                      </p>
                    </div>
                    {isLength(row.unit) && (
                      <InstrumentButton quantity={usedFor(row.reading)} onOpen={() => setSheet('instrument')} />
                    )}
                  </div>
                  {stage === 'after' && row.old !== null && (
                    <p class="quiet">{words.oldEnd(figureText(row.old.figure), faceName(row.old.face))}</p>
                  )}
                  {row[stage] !== null && <p class="quiet">{words.asStands(figureText(row[stage]))}</p>}
                  <FigurePad
                    label={words.field(row.reading, stage)}
                    unit={row.unit}
                    text={text}
                    fault={fault}
                    onText={(typed) => {
                      setText(typed)
                      setFault('')
                    }}
                    onKeep={(typed) => void keep(typed)}
                    inputRef={input}
                  />
                  <div class="figures__ways">
                    <button type="button" class="button" onClick={() => setSheet('limit')}>
                      {row.limit === null ? words.limitDo : words.limitChange}
                    </button>
                    {drafts.some(({ reading }) => reading === row.reading) && isBare(row) && (
                      <button type="button" class="button" onClick={() => drop(row.reading)}>
                        {words.dropFigure}
                      </button>
                    )}
                    {row.limit !== null && row.waived === null && (
                      <button type="button" class="button" onClick={() => setSheet('waive')}>
                        {words.waive}
                      </button>
                    )}
                  </div>
                  <details class="more">
                    <summary>{words.about}</summary>
                    <div class="row">
                      {!isLength(row.unit) && (
                        <TextField
                          label={words.measuredWith}
                          value={settings.used[usedFor(row.reading)] ?? ''}
                          input={{ maxLength: 100 }}
                          onInput={(name) => choose({ used: { ...settings.used, [usedFor(row.reading)]: name } })}
                        />
                      )}
                      <TextField
                        label={words.conditions}
                        hint={words.conditionsHint}
                        value={conditions}
                        input={{ maxLength: 200 }}
                        onInput={setConditions}
                      />
                    </div>
                  </details>
                </>
              )}
            </section>
          )}
        </div>
      </div>
      {sheet === 'add' && (
        <AddFigure
          folded={folded}
          rows={rows}
          onClose={() => setSheet(null)}
          onAdd={(draft) => {
            const known = new Set(rowsOf(folded).map(({ reading }) => reading))
            const left = drafts.filter(({ reading }) => !known.has(reading))
            taken.type({ drafts: [...left, draft].map((one) => JSON.stringify(one)) })
            setSheet(null)
            pick(draft.reading)
          }}
        />
      )}
      {sheet === 'limit' && row !== null && <LimitSheet folded={folded} row={row} onClose={() => setSheet(null)} />}
      {sheet === 'waive' && row !== null && (
        <WaiveSheet unit={folded.id} reading={row.reading} onClose={() => setSheet(null)} />
      )}
      {sheet === 'instrument' && row !== null && (
        <InstrumentSheet quantity={usedFor(row.reading)} onClose={() => setSheet(null)} />
      )}
    </Shell>
  )
}

/** Nothing of it is on the record. */
function isBare({ before, during, after, limit }: Row): boolean {
  return [before, during, after, limit].every((one) => one === null)
}

/** Figures that were taken up and not read yet stand below those that the record has. */
function withDrafts(rows: readonly Row[], drafts: readonly Draft[]): Row[] {
  const known = new Map(rows.map((row) => [row.reading, row]))
  const drafted = new Map(drafts.map((draft) => [draft.reading, draft]))
  const placed = rows.map((row) => ({ ...row, face: row.face ?? drafted.get(row.reading)?.face ?? null }))
  const bare = { before: null, during: null, after: null, limit: null, waived: null, old: null }
  return [...placed, ...drafts.filter(({ reading }) => !known.has(reading)).map((draft) => ({ ...draft, ...bare }))]
}
