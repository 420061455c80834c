/** Fingers, pen and mouse on the stage: taps, a picture that is drawn along or nearer, a mark that is held under the magnifier. */
import type { Size } from './view.ts'
import { moved, pinched, type ScreenPoint, type View, zoomed } from './view.ts'

export type Hit = { hole: string | null }

type Around = {
  hit(at: ScreenPoint, target: Element | null): Hit
  /** Whether a hold marks or moves a hole. */
  canDrag(): boolean
  view(): { view: View; size: Size; picture: Size }
  setView(view: View): void
  tap(at: ScreenPoint, hit: Hit): void
  /** A hole is held (or, with null, a new one), and the finger has moved. */
  hold(at: ScreenPoint, hole: string | null): void
  release(at: ScreenPoint, hole: string | null): void
  /** What was held is given up. */
  letGo(): void
}

/** px that a finger may tremble. */
const TREMBLE = 8
/** ms after which a finger that lies still holds. */
const HOLD = 280
const WHEEL = 0.0016

type Gesture =
  | { kind: 'press'; start: ScreenPoint; hit: Hit; timer: ReturnType<typeof setTimeout> }
  | { kind: 'hold'; hole: string | null }
  | { kind: 'pan'; last: ScreenPoint }
  | { kind: 'pinch'; from: [ScreenPoint, ScreenPoint]; view: View }
  /** All fingers must leave before something new begins. */
  | { kind: 'over' }

/** Listens on the stage; gives what stops it. */
export function gesturesOn(stage: HTMLElement, around: Around): () => void {
  const fingers = new Map<number, ScreenPoint>()
  let gesture: Gesture | null = null
  const stop = new AbortController()
  const options = { signal: stop.signal }

  const placeOf = (event: PointerEvent | WheelEvent): ScreenPoint => {
    const box = stage.getBoundingClientRect()
    return { x: event.clientX - box.left, y: event.clientY - box.top }
  }
  const isTool = (target: EventTarget | null) =>
    target instanceof Element && target.closest('.stage__tools, .stage__over') !== null

  function end(next: Gesture | null): void {
    if (gesture?.kind === 'press') clearTimeout(gesture.timer)
    if (gesture?.kind === 'hold') around.letGo()
    gesture = next
  }

  stage.addEventListener(
    'pointerdown',
    (event) => {
      if (isTool(event.target) || (event.pointerType === 'mouse' && event.button !== 0)) return
      const at = placeOf(event)
      fingers.set(event.pointerId, at)
      if (fingers.size === 1) {
        const hit = around.hit(at, event.target as Element)
        const timer = setTimeout(() => {
          if (gesture?.kind !== 'press' || !around.canDrag()) return
          end({ kind: 'hold', hole: hit.hole })
          capture(event.pointerId)
          around.hold(at, hit.hole)
        }, HOLD)
        end({ kind: 'press', start: at, hit, timer })
      } else if (fingers.size === 2) {
        const [a, b] = [...fingers.values()] as [ScreenPoint, ScreenPoint]
        end({ kind: 'pinch', from: [a, b], view: around.view().view })
        for (const id of fingers.keys()) capture(id)
      } else end({ kind: 'over' })
    },
    options,
  )

  stage.addEventListener(
    'pointermove',
    (event) => {
      if (!fingers.has(event.pointerId)) return
      const at = placeOf(event)
      fingers.set(event.pointerId, at)
      if (gesture?.kind === 'press') {
        if (Math.hypot(at.x - gesture.start.x, at.y - gesture.start.y) <= TREMBLE) return
        const { hit, start } = gesture
        capture(event.pointerId)
        // A mark is drawn along at once; the picture too. Only a new mark has to be held first.
        if (around.canDrag() && hit.hole !== null) {
          end({ kind: 'hold', hole: hit.hole })
          around.hold(at, hit.hole)
        } else {
          end({ kind: 'pan', last: start })
        }
      }
      if (gesture?.kind === 'hold') around.hold(at, gesture.hole)
      else if (gesture?.kind === 'pan') {
        const { view, size, picture } = around.view()
        around.setView(moved(view, size, picture, at.x - gesture.last.x, at.y - gesture.last.y))
        gesture.last = at
      } else if (gesture?.kind === 'pinch') {
        const { size, picture } = around.view()
        const to = [...fingers.values()].slice(0, 2) as [ScreenPoint, ScreenPoint]
        around.setView(pinched(gesture.view, size, picture, gesture.from, to))
      }
    },
    options,
  )

  const up = (event: PointerEvent, gaveUp: boolean) => {
    if (!fingers.delete(event.pointerId)) return
    const at = placeOf(event)
    const was = gesture
    if (fingers.size > 0) {
      end({ kind: 'over' })
      return
    }
    if (was?.kind === 'press') {
      end(null)
      if (!gaveUp) around.tap(at, was.hit)
    } else if (was?.kind === 'hold') {
      gesture = null
      if (gaveUp) around.letGo()
      else around.release(at, was.hole)
    } else end(null)
  }
  stage.addEventListener('pointerup', (event) => up(event, false), options)
  stage.addEventListener('pointercancel', (event) => up(event, true), options)

  stage.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault()
      const { view, size, picture } = around.view()
      around.setView(zoomed(view, size, picture, Math.exp(-event.deltaY * WHEEL), placeOf(event)))
    },
    { ...options, passive: false },
  )
  stage.addEventListener('contextmenu', (event) => around.canDrag() && event.preventDefault(), options)

  function capture(id: number): void {
    try {
      stage.setPointerCapture(id)
    } catch {
      // The finger has left already.
    }
  }

  return () => {
    end(null)
    stop.abort()
  }
}
