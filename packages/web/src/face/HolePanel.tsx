/** One hole: the verdict with its reason, the drawing to scale, what sat here, what is known, each bolt of the tray tried in thought. */
import { type Face, type FaceAnswer, type Hole, type Kind, type Unit, writeQuantity } from '@gripbook/engine'
import { boltFound, type FaceWork, holeStruckOut } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { JointCheck } from '../joint/JointCheck.tsx'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { HOLE_QUANTITIES } from '../readings/quantities.ts'
import { Section } from '../verdict/Section.tsx'
import { sentence, words } from '../words/index.ts'
import { AsFound } from './AsFound.tsx'
import { HoleForm } from './HoleForm.tsx'
import { rightlyPut } from './lead.ts'
import { PairList } from './PairList.tsx'
import './HolePanel.css'

type Props = {
  unitId: string
  /** What was computed on; null while the sums have nothing to go by. */
  unit: Unit | null
  face: Face
  work: FaceWork | undefined
  hole: Hole
  kinds: readonly Kind[]
  answer: FaceAnswer | null
  named: (kind: string) => string
  onClose: () => void
  onMeasure: (quantity: string) => void
  onTray: () => void
}

const UNKNOWN = ' unknown'
const NEW = ' new'

export function HolePanel(props: Props) {
  const { unitId, unit, face, work, hole, kinds, answer, named, onClose, onMeasure, onTray } = props
  const { write } = useApp()
  const [editing, setEditing] = useState(false)
  const [shown, setShown] = useState<string | undefined>(undefined)
  const here = answer?.holes[hole.id]
  // A bolt that "must change" may be right and a reading wrong: what is to be doubted first stands before it.
  const conflict =
    [answer?.conflict, ...(answer?.furtherConflicts ?? [])].find((one) => one?.holes.includes(hole.id)) ?? undefined

  async function found(kind: string) {
    if (kind === NEW) return onTray()
    if (kind === UNKNOWN || kind === hole.asFound) return
    await write(unitId, [boltFound({ face: face.id, hole: hole.id, kind })], words.face.asFoundKept(hole.id))
  }

  return (
    <section class="hole" aria-labelledby="hole-title">
      <header class="hole__head">
        <h2 id="hole-title">{words.face.hole(hole.id)}</h2>
        {here !== undefined && (
          <p class={`verdict verdict--${here.verdict}`}>
            <span class="verdict__shape" aria-hidden="true" />
            {words.verdict.verdicts[here.verdict]}
          </p>
        )}
        <button type="button" class="sheet__close" aria-label={words.shell.close} onClick={onClose}>
          <Icon name="cross" />
        </button>
      </header>

      {here !== undefined && (
        <div class="stack stack--tight">
          <p class="hole__belongs">{belongs(here, named)}</p>
          <p>{sentence(here.why)}</p>
          {conflict !== undefined && <p class="hole__doubt">{words.verdict.doubt(conflict, named)}</p>}
          {here.verdict === 'settled' && (
            <p class="quiet">{here.proven === true ? words.verdict.proven : words.verdict.notProven}</p>
          )}
          {here.verdict === 'open' && (
            <ul class="chances">
              {[...here.may]
                .sort((a, b) => (here.likely[b] ?? 0) - (here.likely[a] ?? 0))
                .map((kind) => (
                  <li key={kind}>
                    <span>{named(kind)}</span>
                    <meter min={0} max={1} value={here.likely[kind] ?? 0} aria-label={named(kind)} />
                    <b>{words.verdict.chance(here.likely[kind] ?? 0)}</b>
                  </li>
                ))}
            </ul>
          )}
          {here.asFound !== undefined && (
            <AsFound asFound={here.asFound} now={rightlyPut(here, work?.holes[hole.id])} named={named} />
          )}
        </div>
      )}

      {unit !== null && (
        <figure class="hole__drawing">
          <Section
            unit={unit}
            face={face}
            hole={hole}
            answer={answer}
            {...(shown === undefined ? {} : { kind: shown })}
          />
        </figure>
      )}

      <Choice
        label={words.face.asFound}
        options={[
          ...kinds.map(({ id }) => ({ value: id, words: named(id) })),
          { value: 'none', words: words.face.asFoundNone },
          { value: NEW, words: words.face.addKind },
        ]}
        value={hole.asFound ?? null}
        onChoose={(kind) => void found(kind)}
      />

      <div class="stack stack--tight">
        <h3>{words.face.known}</h3>
        <dl class="facts lines">
          {HOLE_QUANTITIES.map((quantity) => {
            const value = hole[quantity]
            return (
              <div key={quantity} class="facts__line">
                <dt>{words.readings.names[quantity]}</dt>
                <dd class={value === undefined ? 'quiet' : ''}>
                  {value === undefined ? words.face.noReading : writeQuantity(value)}
                </dd>
                <dd>
                  <button type="button" class="button button--plain" onClick={() => onMeasure(quantity)}>
                    {words.face.measure}
                    <span class="unseen"> {words.readings.names[quantity]}</span>
                  </button>
                </dd>
              </div>
            )
          })}
        </dl>
        <button type="button" class="button" aria-expanded={editing} onClick={() => setEditing(!editing)}>
          {words.face.describe}
        </button>
        {editing && <HoleForm unitId={unitId} face={face} hole={hole} onDone={() => setEditing(false)} />}
      </div>

      {answer !== null && (
        <PairList
          pairs={answer.pairs.filter((pair) => pair.hole === hole.id)}
          named={named}
          shown={shown}
          onShow={setShown}
        />
      )}
      <JointCheck face={face} hole={hole} kinds={kinds} kind={shown ?? here?.best ?? hole.asFound} />
      <p class="quiet">{words.verdict.notPermission}</p>
      <button
        type="button"
        class="button button--stop"
        onClick={async () => {
          const done = await write(
            unitId,
            [holeStruckOut({ face: face.id, hole: hole.id })],
            words.face.struckOut(hole.id),
          )
          if (done !== null) onClose()
        }}
      >
        {words.face.strikeOut}
      </button>
    </section>
  )
}

function belongs({ verdict, may, best }: FaceAnswer['holes'][string], named: (kind: string) => string): string {
  if (verdict === 'settled' && may[0] !== undefined) return words.verdict.belongs(named(may[0]))
  if (verdict === 'open' && may.length > 0) return words.verdict.oneOf(may.map(named))
  return best === null ? words.verdict.noneFits : named(best)
}
