/** A face: the photograph is the page. What the marks show is the question that was picked; everything else is beside or below it. */
import type { Face, Kind } from '@gripbook/engine'
import { NONE, trayOf } from '@gripbook/print'
import { boltFound, type FoldedUnit, facePhotographed, holeMarked, holeMoved } from '@gripbook/record'
import type { ComponentChildren } from 'preact'
import { useMemo, useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { later } from '../app/later.tsx'
import { pathOf, type Route } from '../app/route.ts'
import { Shell } from '../app/Shell.tsx'
import { useUnit } from '../app/useUnit.ts'
import { BenchLink } from '../bench/BenchLink.tsx'
import { usePhotograph } from '../device/usePhotograph.ts'
import { Icon, type IconName } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { Lead } from '../verdict/Lead.tsx'
import { words } from '../words/index.ts'
import { type FaceNow, useAnswer } from '../workers/useAnswer.ts'
import { FoundPanel } from './FoundPanel.tsx'
import { HoleList } from './HoleList.tsx'
import { HolePanel } from './HolePanel.tsx'
import { namesOf } from './kindNames.ts'
import { MarkPanel } from './MarkPanel.tsx'
import { marksOf, millimetresAt, nextHole, type Picture, pictureOf, QUESTIONS, type Question } from './marks.ts'
import { NextStep } from './NextStep.tsx'
import { PhotographFirst } from './PhotographFirst.tsx'
import { ScalePanel } from './ScalePanel.tsx'
import { Stage, type StageMode } from './stage/Stage.tsx'
import type { PicturePoint } from './stage/view.ts'
import './FacePage.css'

const FacePaper = later(() => import('../finish/FacePaper.tsx').then((part) => part.FacePaper))

type Props = Extract<Route, { at: 'face' }>

export function FacePage(props: Props) {
  const folded = useUnit(props.unit)
  if (folded === null) return <p class="starting">{words.shell.opening}</p>
  const face = folded.unit.faces.find(({ id }) => id === props.face)
  if (face === undefined) return <NoFace />
  return <OpenFace {...props} folded={folded} open={face} />
}

function NoFace() {
  return (
    <Shell title={words.face.noFace}>
      <p class="column">{words.face.noFaceWhat}</p>
    </Shell>
  )
}

function OpenFace({ book, unit, face: id, hole: holeId, folded, open }: Props & { folded: FoldedUnit; open: Face }) {
  const { go, write } = useApp()
  const work = folded.faces[id]
  const now = useAnswer(folded, id)
  const [question, setQuestion] = useState<Question>('belongs')
  const [mode, setMode] = useState<StageMode>('look')
  const [points, setPoints] = useState<PicturePoint[]>([])
  const [thread, setThread] = useState<string | null>(null)
  const [bare, setBare] = useState(false)
  const [noting, setNoting] = useState<string | null>(null)
  const given = useRef(0)

  const picture = pictureOf(work)
  const photograph = usePhotograph(picture.photograph)
  const kinds = useMemo(() => [...trayOf(folded.unit, open).values()], [folded.unit, open])
  const names = useMemo(() => namesOf(kinds), [kinds])
  const named = (kind: string) => names.long.get(kind) ?? kind
  const marks = useMemo(() => marksOf(open, work, now.answer, question), [open, work, now.answer, question])
  const hole = open.holes.find((one) => one.id === holeId)
  const here = { book, unit, face: id } as const
  const tapped = (which: string | null) => {
    if (question !== 'came out' || noting === null || which === null || mode !== 'look') return openHole(which)
    const was = open.holes.find((one) => one.id === which)?.asFound
    const said = words.face.noted(which, noting === NONE ? words.face.asFoundNone : named(noting))
    if (was !== noting) void write(unit, [boltFound({ face: id, hole: which, kind: noting })], said)
  }
  const openHole = (which: string | null) => go({ at: 'face', ...here, ...(which === null ? {} : { hole: which }) })
  const millimetres = (point: PicturePoint) => faceMillimetres(point, picture)

  async function addHole(point: PicturePoint) {
    if (thread === null) return
    given.current = nextHole(folded.entries, id, given.current)
    const happening = holeMarked({
      face: id,
      hole: String(given.current),
      mark: pixels(point, picture),
      ...millimetres(point),
      thread,
    })
    await write(unit, [happening])
  }

  async function moveHole(which: string, point: PicturePoint) {
    const happening = holeMoved({ face: id, hole: which, mark: pixels(point, picture), ...millimetres(point) })
    await write(unit, [happening], words.face.moved(which))
  }

  const empty = picture.photograph === undefined && open.holes.length === 0 && !bare
  return (
    <Shell title={open.name ?? open.id} over={folded.unit.name ?? ''} filled>
      <div class={`face${hole === undefined ? '' : ' face--hole'}${mode === 'look' ? '' : ' face--busy'}`}>
        {empty ? (
          <PhotographFirst
            onKept={(kept) => write(unit, [facePhotographed({ face: id, ...kept })], words.face.photographed)}
            onWithout={() => {
              setBare(true)
              setMode('mark')
            }}
          />
        ) : (
          <Stage
            picture={picture}
            url={photograph.state === 'here' ? photograph.url : null}
            marks={marks}
            names={names.short}
            mode={mode === 'mark' && thread === null ? 'look' : mode}
            selected={holeId}
            points={points}
            onOpen={tapped}
            onAdd={(point) => void addHole(point)}
            onMove={(which, point) => void moveHole(which, point)}
            onPoint={(point) => setPoints((before) => (before.length < 2 ? [...before, point] : before))}
          >
            <div class="stage__over">
              {mode === 'look' && (
                <Choice
                  label={words.face.questionLabel}
                  quiet
                  options={QUESTIONS.map((value) => ({ value, words: words.face.questions[value] }))}
                  value={question}
                  onChoose={setQuestion}
                />
              )}
              {photograph.state === 'away' && <p class="stage__note">{words.photograph.away}</p>}
            </div>
          </Stage>
        )}
        {!empty && (
          <div class="face__panel">
            {mode === 'mark' && (
              <MarkPanel unit={unit} face={open} folded={folded} onThread={setThread} onDone={() => setMode('look')} />
            )}
            {mode === 'scale' && (
              <ScalePanel
                unit={unit}
                face={open}
                work={work}
                points={points}
                onAgain={() => setPoints([])}
                onDone={() => {
                  setPoints([])
                  setMode('look')
                }}
              />
            )}
            {mode === 'look' && hole !== undefined && (
              <HolePanel
                key={hole.id}
                unitId={unit}
                unit={now.unit}
                face={now.face ?? open}
                work={folded.faces[open.id]}
                hole={hole}
                kinds={kinds}
                answer={now.answer}
                named={named}
                onClose={() => openHole(null)}
                onMeasure={(quantity) => go({ at: 'readings', ...here, of: `${quantity} ${hole.id}` })}
                onTray={() => go({ at: 'tray', ...here })}
              />
            )}
            {mode === 'look' && hole === undefined && (
              <Overview
                bench={kinds.length > 0 && <BenchLink folded={folded} face={id} book={book} />}
                noting={noting}
                onNoting={setNoting}
                folded={folded}
                now={now}
                open={open}
                kinds={kinds}
                named={named}
                names={names.short}
                question={question}
                picture={picture}
                onHole={openHole}
                onMeasure={() => go({ at: 'readings', ...here })}
                onMode={setMode}
                onPhotograph={(kept) => write(unit, [facePhotographed({ face: id, ...kept })], words.face.photographed)}
                marks={marks}
              />
            )}
          </div>
        )}
        {!empty && mode === 'look' && (
          <nav class="face__bar" aria-label={open.name ?? open.id}>
            <BarButton icon="mark" onClick={() => setMode('mark')}>
              {words.face.markHoles}
            </BarButton>
            <BarLink icon="tray" to={{ at: 'tray', ...here }}>
              {words.face.tray}
            </BarLink>
            <BarLink icon="measure" to={{ at: 'readings', ...here }}>
              {words.face.readings}
            </BarLink>
            <BarLink icon="order" to={{ at: 'tightening', ...here }}>
              {words.face.tightening}
            </BarLink>
          </nav>
        )}
      </div>
    </Shell>
  )
}

type OverviewProps = {
  folded: FoldedUnit
  bench: ComponentChildren
  noting: string | null
  onNoting: (kind: string | null) => void
  now: FaceNow
  open: Face
  kinds: readonly Kind[]
  named: (kind: string) => string
  names: ReadonlyMap<string, string>
  question: Question
  picture: Picture
  marks: ReturnType<typeof marksOf>
  onHole: (hole: string) => void
  onMeasure: () => void
  onMode: (mode: StageMode) => void
  onPhotograph: (kept: { photograph: string; width: number; height: number }) => void
}

function Overview({ folded, now, open, kinds, named, names, question, picture, marks, ...does }: OverviewProps) {
  const { answer, working, fault, leftOut } = now
  return (
    <div class="stack">
      {fault !== null && <p class="field__fault">{`${words.verdict.failed} ${fault}`}</p>}
      {question === 'came out' && kinds.length > 0 && (
        <FoundPanel kinds={kinds} named={named} noting={does.noting} onNoting={does.onNoting} />
      )}
      <NextStep face={open} kinds={kinds} question={question} />
      {answer !== null && kinds.length > 0 && (
        <Lead
          answer={answer}
          work={folded.faces[open.id]}
          kinds={kinds}
          named={named}
          onHole={does.onHole}
          onMeasure={does.onMeasure}
        />
      )}
      {working && <Working stop={now.stop} />}
      {does.bench}
      {leftOut.length > 0 && <p class="quiet">{words.verdict.leftOut(leftOut.length)}</p>}
      <HoleList
        face={open}
        marks={marks}
        names={names}
        picture={picture}
        onHole={does.onHole}
        onScale={() => does.onMode('scale')}
        onPhotograph={does.onPhotograph}
      />
      {open.holes.length > 0 && <FacePaper folded={folded} now={now} />}
    </div>
  )
}

/** Told only when it takes long enough to be waited for. */
function Working({ stop }: { stop: () => void }) {
  return (
    <p class="working">
      {words.verdict.working}
      <button type="button" class="button button--stop" onClick={stop}>
        {words.verdict.stop}
      </button>
    </p>
  )
}

function BarButton({ icon, onClick, children }: { icon: IconName; onClick: () => void; children: string }) {
  return (
    <button type="button" class="face__do" onClick={onClick}>
      <Icon name={icon} />
      {children}
    </button>
  )
}

function BarLink({ icon, to, children }: { icon: IconName; to: Route; children: string }) {
  const { go } = useApp()
  return (
    <a
      class="face__do"
      href={pathOf(to)}
      onClick={(event) => {
        event.preventDefault()
        go(to)
      }}
    >
      <Icon name={icon} />
      {children}
    </a>
  )
}

/** A tenth of a pixel is nearer than any finger. */
function pixels({ x, y }: PicturePoint, { width, height }: Picture): [number, number] {
  return [Math.round(x * width * 10) / 10, Math.round(y * height * 10) / 10]
}

/** Where the scale is known a mark is also a place on the face. */
function faceMillimetres(point: PicturePoint, picture: Picture): { at?: [number, number] } {
  const { pixelsPerMillimetre: scale, height } = picture
  return scale === undefined ? {} : { at: millimetresAt(pixels(point, picture), height, scale) }
}
