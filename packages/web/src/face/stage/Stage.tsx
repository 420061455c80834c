/** The photograph with its holes: looked at, drawn near, marked. It keeps the view and the gesture under way, nothing of the record. */
import type { ComponentChildren } from 'preact'
import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks'
import { Icon } from '../../look/icons.tsx'
import { words } from '../../words/index.ts'
import type { Mark, Picture } from '../marks.ts'
import { crowding, nearestMark } from './crowding.ts'
import { gesturesOn, type Hit } from './gestures.ts'
import { Magnifier } from './Magnifier.tsx'
import { MarkButton } from './MarkButton.tsx'
import {
  NOTHING_OVER,
  type Over,
  onPicture,
  type PicturePoint,
  roomForTools,
  type ScreenPoint,
  showing,
  type View,
  wholeView,
  zoomed,
} from './view.ts'
import './Stage.css'

export type StageMode = 'look' | 'mark' | 'scale'

type Props = {
  picture: Picture
  url: string | null
  marks: readonly Mark[]
  /** Short names of the kinds. */
  names: ReadonlyMap<string, string>
  mode: StageMode
  selected: string | undefined
  /** Points set for the scale. */
  points: readonly PicturePoint[]
  onOpen: (hole: string | null) => void
  onAdd: (at: PicturePoint) => void
  onMove: (hole: string, to: PicturePoint) => void
  onPoint: (at: PicturePoint) => void
  /** Over the picture: what the mode says. */
  children?: ComponentChildren
  /** Drawn on the picture, below the marks. */
  layer?: ComponentChildren
  /** What the marks are, and what the button in the middle does, where they are not holes. */
  called?: { marks: string; add: string }
}

/** Times the whole: from here on the one key leads back. */
const ROUND_ENDS = 2.5
/** px: how far a finger may miss a mark. */
const MISS = 30

export function Stage(props: Props) {
  const { picture, url, marks, names, mode, selected, points, children, layer, called } = props
  const stage = useRef<HTMLDivElement>(null)
  const [size, setSize] = useState({ width: 0, height: 0 })
  const [over, setOver] = useState(NOTHING_OVER)
  const [view, setView] = useState<View | null>(null)
  const [lens, setLens] = useState<{ at: ScreenPoint; hole: string | null } | null>(null)
  /** The view as a hole that was opened has left it. */
  const moved = useRef<View | null>(null)
  /** A mark under the finger, before it is let go. */
  const [held, setHeld] = useState<{ hole: string; at: PicturePoint } | null>(null)
  const shown = view ?? wholeView(size, picture, over)
  // What the gestures read is what is on the screen at that moment, not what was when they were set up.
  const now = useRef({ ...props, view: shown, size })
  now.current = { ...props, view: shown, size }

  useLayoutEffect(() => {
    const element = stage.current!
    const measure = () => {
      const next = { width: element.clientWidth, height: element.clientHeight }
      setSize((before) => (before.width === next.width && before.height === next.height ? before : next))
      const box = (part: string) => element.querySelector(part)?.getBoundingClientRect()
      const top = roomFor(box('.stage__over')?.height ?? 0)
      const tools = [...element.querySelectorAll('.stage__tool')]
        .map((tool) => tool.getBoundingClientRect().width)
        .filter((width) => width > 0)
      const room = roomForTools(next, picture, top, roomFor(tools[0] ?? 0), tools.length)
      setOver((before) => (same(before, room) ? before : room))
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [mode, selected === undefined, picture.width, picture.height])

  // Another size of the stage (a turned phone, an opened panel) or another picture shows the whole again, unless a hole is looked at.
  useEffect(() => setView(null), [picture.width, picture.height, picture.photograph])
  useEffect(() => {
    const mark = marks.find(({ hole }) => hole === selected)
    if (mark === undefined || size.width === 0) {
      // What was moved for the hole is moved back when it is closed; where a hand has drawn it, it stays.
      setView((before) => (before !== null && before === moved.current ? null : before))
      return
    }
    setView((before) => {
      const from = before ?? wholeView(size, picture, over)
      const to = showing(from, size, picture, mark)
      if (to === from) return before
      if (before === null || before === moved.current) moved.current = to
      return to
    })
    // Only a hole newly opened or a stage newly sized moves the view; a mark that is dragged does not.
  }, [selected, size, over])

  useEffect(() => {
    const hit = (at: ScreenPoint, target: Element | null): Hit => {
      const on = target?.closest<HTMLElement>('[data-hole]')?.dataset.hole
      if (on !== undefined) return { hole: on }
      const { view: seen, picture: of, marks: there, mode: doing } = now.current
      const near = doing === 'look' ? nearestMark(there, seen, of, at, MISS) : null
      return { hole: near }
    }
    return gesturesOn(stage.current!, {
      hit,
      canDrag: () => now.current.mode === 'mark',
      view: () => now.current,
      setView,
      tap(at, { hole }) {
        const { mode: doing, view: seen, picture: of, onAdd, onPoint, onOpen: open } = now.current
        const point = onPicture(seen, of, at)
        if (doing === 'scale') return inside(point) && onPoint(point)
        if (hole !== null) return open(hole)
        if (doing === 'mark') return inside(point) && onAdd(point)
        open(null)
      },
      hold(at, hole) {
        setLens({ at, hole })
        if (hole !== null) setHeld({ hole, at: onPicture(now.current.view, now.current.picture, at) })
      },
      release(at, hole) {
        setLens(null)
        setHeld(null)
        const { view: seen, picture: of, onAdd, onMove } = now.current
        const point = onPicture(seen, of, at)
        if (!inside(point)) return
        if (hole === null) onAdd(point)
        else onMove(hole, point)
      },
      letGo() {
        setLens(null)
        setHeld(null)
      },
    })
  }, [])

  const zoomBy = useCallback(
    (factor: number) => {
      setView(zoomed(now.current.view, size, picture, factor, { x: size.width / 2, y: size.height / 2 }))
    },
    [size, picture],
  )

  /** By one key: nearer, nearer still, and the whole again. */
  const isRoundOver = shown.scale > wholeView(size, picture, over).scale * ROUND_ENDS

  const room = useMemo(() => crowding(marks, picture), [marks, picture])
  const onScreenRoom = room * shown.scale
  const markSize = Math.max(12, Math.min(36, onScreenRoom * 0.85))
  const withNames = onScreenRoom > 44

  // While the picture is drawn along, the marks stay the same elements: only what they show makes them anew.
  const buttons = useMemo(
    () =>
      marks.map((mark) => (
        <MarkButton
          key={mark.hole}
          mark={held?.hole === mark.hole ? { ...mark, ...held.at } : mark}
          names={names}
          named={withNames || mark.hole === selected}
          selected={mark.hole === selected}
          movable={mode === 'mark'}
          onOpen={(hole) => now.current.onOpen(hole)}
          onStep={(dx, dy) => {
            const { view: seen, picture: of, onMove } = now.current
            const to = { x: mark.x + dx / (of.width * seen.scale), y: mark.y + dy / (of.height * seen.scale) }
            if (inside(to)) onMove(mark.hole, to)
          }}
        />
      )),
    [marks, names, held, withNames, selected, mode],
  )

  return (
    <div
      class={`stage stage--${mode}${markSize < 20 ? ' stage--dots' : ''}${over.right > 0 ? ' stage--column' : ''}`}
      ref={stage}
    >
      <div
        class={`stage__sheet${url === null ? ' stage__sheet--blank' : ''}`}
        style={{
          width: `${picture.width * shown.scale}px`,
          height: `${picture.height * shown.scale}px`,
          transform: `translate(${shown.x}px, ${shown.y}px)`,
          '--mark': `${markSize}px`,
          '--under': `${Math.max(56, Math.min(150, onScreenRoom * 1.1))}px`,
        }}
      >
        {url !== null && <img class="stage__photograph" src={url} alt={words.face.photographOf} draggable={false} />}
        {layer}
        <ul class="stage__marks" aria-label={called?.marks ?? words.face.holes}>
          {buttons}
        </ul>
        {points.map((point, i) => (
          <span key={i} class="stage__point" style={{ left: `${point.x * 100}%`, top: `${point.y * 100}%` }} />
        ))}
      </div>
      {lens !== null && <Magnifier at={lens.at} view={shown} picture={picture} url={url} stage={size} />}
      {children}
      <div class="stage__tools">
        {mode !== 'look' && (
          <button
            type="button"
            class="stage__tool"
            aria-label={called?.add ?? (mode === 'mark' ? words.face.addInMiddle : words.face.pointInMiddle)}
            onClick={() => {
              const at = onPicture(shown, picture, { x: size.width / 2, y: size.height / 2 })
              if (mode === 'mark') props.onAdd(at)
              else props.onPoint(at)
            }}
          >
            <Icon name="mark" />
          </button>
        )}
        <button
          type="button"
          class="stage__tool stage__tool--zoom"
          aria-label={words.face.nearer}
          onClick={() => zoomBy(1.5)}
        >
          <Icon name="plus" />
        </button>
        <button
          type="button"
          class="stage__tool stage__tool--zoom"
          aria-label={words.face.further}
          onClick={() => zoomBy(1 / 1.5)}
        >
          <Icon name="minus" />
        </button>
        <button
          type="button"
          class="stage__tool stage__tool--zoom"
          aria-label={words.face.whole}
          onClick={() => setView(null)}
        >
          <Icon name="whole" />
        </button>
        <button
          type="button"
          class="stage__tool stage__tool--round"
          aria-label={words.face.nearerOrWhole}
          onClick={() => (isRoundOver ? setView(null) : zoomBy(1.7))}
        >
          <Icon name={isRoundOver ? 'whole' : 'plus'} />
        </button>
      </div>
    </div>
  )
}

/** A part over the picture and the air around it. */
function roomFor(height: number): number {
  return height === 0 ? 0 : height + 16
}

function same(a: Over, b: Over): boolean {
  return a.top === b.top && a.bottom === b.bottom && a.right === b.right
}

function inside({ x, y }: PicturePoint): boolean {
  return x >= 0 && x <= 1 && y >= 0 && y <= 1
}
