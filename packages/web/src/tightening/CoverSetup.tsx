/** The cover: drawn on the photograph, its thickness and what lies in the joint beside it. Everything else may stay as it is. */
import type { Fault, Point } from '@gripbook/engine'
import { faceDescribed, type Happening, holeMoved } from '@gripbook/record'
import { useMemo, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Stage } from '../face/stage/Stage.tsx'
import { words as shared } from '../words/index.ts'
import { words } from '../words/tightening.ts'
import { CoverLayer } from './CoverLayer.tsx'
import { DrawBar, DrawPanel } from './DrawPanel.tsx'
import { changesIn, type Draft, type DraftFault, readSetup } from './draft.ts'
import { cornersOf, leastCorners, type Target, withCorners, without, withTap } from './drawn.ts'
import { type Placed, placedFault } from './faultPlace.ts'
import { type Frame, holePlaces } from './frame.ts'
import { marginFor, outlineAround } from './outline.ts'
import { SetupBar, SetupForm } from './SetupForm.tsx'
import type { Seen } from './seen.ts'
import { tapped } from './sequence.ts'
import { cornerMarks, HoleDots, holeMarks } from './setupMarks.tsx'
import { useSetup } from './useSetup.ts'

type Props = Seen & {
  frame: Frame
  /** The face has a cover: giving up leads back to its order. */
  told: boolean
  /** What the sums found wrong with it as it was kept. */
  computed: readonly Fault[]
  onDone: () => void
}

const NO_NAMES: ReadonlyMap<string, string> = new Map()

type Drawing = { target: Target; closed: boolean; picked: number | null; before: Point[][] }

export function CoverSetup({ folded, face, picture, url, away, frame, told, computed, onDone }: Props) {
  const { settings, write } = useApp()
  const { draft, change, clear } = useSetup(folded.id, face, settings.length)
  const [drawing, setDrawing] = useState<Drawing | null>(null)
  /** The pass whose holes are tapped. */
  const [tapping, setTapping] = useState<number | null>(null)
  const [faults, setFaults] = useState<readonly DraftFault[]>([])
  const [found, setFound] = useState(() => computed.map((fault) => placedFault(fault, face)))
  const places = useMemo(() => holePlaces(face, folded.faces[face.id], frame), [face, folded.faces[face.id], frame])
  const holes = useMemo(() => face.holes.map(({ id }) => id), [face])
  const margin = marginFor(face.holes)

  const put = (next: Draft, touched?: Target) => {
    change(() => next)
    setFaults([])
    if (touched !== undefined) setFound((before) => before.filter((fault) => !speaksOf(fault, touched)))
  }
  const corners = drawing === null ? [] : cornersOf(draft, drawing.target)
  const setCorners = (next: Point[], more: Partial<Drawing> = {}) => {
    if (drawing === null) return
    put(withCorners(draft, drawing.target, next), drawing.target)
    setDrawing({ ...drawing, before: [...drawing.before, corners], ...more })
  }
  const draw = (target: Target) => {
    const closed = cornersOf(draft, target).length >= 3
    setTapping(null)
    setDrawing({ target, closed, picked: null, before: [] })
  }
  const takeFromMarks = () => {
    const around = outlineAround(
      [...places.values()].map((place) => frame.toFace(place)),
      margin,
    )
    if (around === null) return
    put({ ...draft, outline: around }, { at: 'outline' })
    if (drawing === null) setDrawing({ target: { at: 'outline' }, closed: true, picked: null, before: [draft.outline] })
    else setDrawing({ ...drawing, closed: true, picked: null, before: [...drawing.before, corners] })
  }

  async function keep() {
    const read = readSetup(draft, face, settings.length)
    if (!read.ok) return setFaults(read.faults)
    const body = changesIn(face, read.told)
    const happenings: Happening[] = [
      ...(body === null ? [] : [faceDescribed(body)]),
      // Holes that are marked and have no place in mm yet get theirs from the scale.
      ...face.holes.flatMap(({ id, at }) => {
        const place = places.get(id)
        return at !== undefined || place === undefined
          ? []
          : [holeMoved({ face: face.id, hole: id, at: frame.toFace(place) })]
      }),
    ]
    if (happenings.length > 0 && (await write(folded.id, happenings, words.kept)) === null) return
    clear()
    onDone()
  }

  const marks = useMemo(
    () => (drawing === null ? holeMarks(holes, places, draft, tapping, found) : cornerMarks(corners, frame)),
    [drawing === null, corners, holes, places, draft, tapping, found, frame],
  )
  const nearPoints = useMemo(
    () => found.flatMap(({ near }) => (near === undefined ? [] : [frame.toPicture(near)])),
    [found, frame],
  )
  return (
    <div class={`face tightening${drawing === null && tapping === null ? ' tightening--form' : ''}`}>
      <Stage
        picture={picture}
        url={url}
        marks={marks}
        names={NO_NAMES}
        mode={drawing === null ? 'look' : 'mark'}
        selected={drawing?.picked === null ? undefined : drawing?.picked.toString()}
        points={nearPoints}
        {...(drawing === null ? {} : { called: { marks: words.cornersMarks, add: words.cornerInMiddle } })}
        layer={
          <>
            <CoverLayer
              picture={picture}
              frame={frame}
              draft={draft}
              target={drawing?.target ?? null}
              closed={drawing?.closed ?? true}
            />
            {drawing !== null && <HoleDots places={places} />}
          </>
        }
        onOpen={(mark) => {
          if (drawing === null) {
            if (tapping !== null && mark !== null) put(withTapped(draft, tapping, mark, holes))
            return
          }
          const picked = mark === null ? null : Number(mark)
          const closes = !drawing.closed && picked === 0 && corners.length >= 3
          setDrawing({ ...drawing, closed: drawing.closed || closes, picked: closes ? null : picked })
        }}
        onAdd={(point) => {
          if (drawing === null) return
          setCorners(withTap(corners, drawing.target, drawing.closed, frame.toFace(point)), { picked: null })
        }}
        onMove={(mark, point) => {
          const which = Number(mark)
          setCorners(corners.map((corner, i) => (i === which ? frame.toFace(point) : corner)))
        }}
        onPoint={() => {}}
      >
        {away && (
          <div class="stage__over">
            <p class="stage__note">{shared.photograph.away}</p>
          </div>
        )}
      </Stage>
      <div class="face__panel">
        {drawing === null ? (
          <SetupForm
            face={face}
            draft={draft}
            faults={faults}
            margin={margin}
            told={told}
            tapping={tapping}
            onChange={put}
            onDraw={draw}
            onRemove={(target) => put(without(draft, target), target)}
            onFromMarks={places.size === 0 ? null : takeFromMarks}
            onTapping={setTapping}
            onKeep={() => void keep()}
            found={found}
          />
        ) : (
          <DrawPanel
            target={drawing.target}
            count={corners.length}
            closed={drawing.closed}
            picked={drawing.picked}
            fromMarks={
              drawing.target.at === 'outline' && places.size > 0
                ? { margin: words.far(margin, settings.length), take: takeFromMarks }
                : null
            }
            onRemove={() => {
              if (drawing.picked === null) return
              const left = corners.filter((_, i) => i !== drawing.picked)
              setCorners(left, { picked: null, closed: drawing.closed && left.length >= 3 })
            }}
            onAgain={() => setCorners([], { picked: null, closed: false })}
          />
        )}
      </div>
      {drawing === null ? (
        <SetupBar
          told={told}
          faults={faults}
          onCancel={() => {
            clear()
            onDone()
          }}
        />
      ) : (
        <DrawBar
          target={drawing.target}
          count={corners.length}
          canUndo={drawing.before.length > 0}
          onUndo={() => {
            const last = drawing.before.at(-1)
            if (last === undefined) return
            put(withCorners(draft, drawing.target, last))
            setDrawing({
              ...drawing,
              before: drawing.before.slice(0, -1),
              picked: null,
              closed: drawing.closed && last.length >= 3,
            })
          }}
          onDone={() => {
            const { target } = drawing
            // What was begun and has nothing in it is no opening.
            if (target.at !== 'outline' && corners.length === 0) put(without(draft, target))
            if (corners.length === 0 || corners.length >= leastCorners(target)) setDrawing(null)
          }}
        />
      )}
    </div>
  )
}

function withTapped(draft: Draft, pass: number, hole: string, holes: readonly string[]): Draft {
  const passes = draft.passes.map((one, i) =>
    i === pass ? { ...one, sequence: tapped(one.sequence, hole, holes) } : one,
  )
  return { ...draft, passes }
}

/** A fault of the outline may be that of a hole, a line or an opening beside it. */
function speaksOf(fault: Placed, touched: Target): boolean {
  if (touched.at === 'outline') return true
  return fault.at === touched.at && (fault.index === undefined || fault.index === touched.index)
}
