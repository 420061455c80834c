/** Which part of the picture the stage shows: sums without a page. */

/** A point on the screen, CSS pixels from the stage's corner. */
export type ScreenPoint = { x: number; y: number }
/** A point on the picture, as shares of its width and height. */
export type PicturePoint = { x: number; y: number }
export type Size = { width: number; height: number }

/** Screen pixels to one pixel of the picture, and where the picture's corner lies on the stage. */
export type View = { scale: number; x: number; y: number }

const CLOSEST = 8
/** Share of the smaller of picture and stage that stays in sight. */
const KEPT = 0.5

/** px at the edges of the stage where buttons lie over it. */
export type Over = { top: number; bottom: number; right: number }

export const NOTHING_OVER: Over = { top: 0, bottom: 0, right: 0 }

/** The whole picture in the middle of what the buttons leave of the stage. */
export function wholeView(stage: Size, picture: Size, { top, bottom, right }: Over = NOTHING_OVER): View {
  const height = Math.max(stage.height - top - bottom, stage.height / 3)
  const width = Math.max(stage.width - right, stage.width / 3)
  const scale = Math.min(width / picture.width, height / picture.height)
  return {
    scale,
    x: (width - picture.width * scale) / 2,
    y: top + (height - picture.height * scale) / 2,
  }
}

/** Buttons in a row at the bottom or in a column at the right, whichever leaves the picture larger. `button` is the side of one, px with its gap. */
export function roomForTools(stage: Size, picture: Size, top: number, button: number, count: number): Over {
  const row: Over = { top, bottom: button, right: 0 }
  const column: Over = { top, bottom: 0, right: button }
  if (count * button > stage.height - top) return row
  return wholeView(stage, picture, column).scale > wholeView(stage, picture, row).scale ? column : row
}

export function onPicture(view: View, picture: Size, at: ScreenPoint): PicturePoint {
  return { x: (at.x - view.x) / (view.scale * picture.width), y: (at.y - view.y) / (view.scale * picture.height) }
}

export function onScreen(view: View, picture: Size, at: PicturePoint): ScreenPoint {
  return { x: view.x + at.x * picture.width * view.scale, y: view.y + at.y * picture.height * view.scale }
}

/** Nearer or further by a factor; what lies under `about` stays there. */
export function zoomed(view: View, stage: Size, picture: Size, factor: number, about: ScreenPoint): View {
  const least = wholeView(stage, picture).scale
  const scale = Math.min(Math.max(view.scale * factor, least * 0.8), Math.max(CLOSEST, least))
  const real = scale / view.scale
  return within(
    { scale, x: about.x - (about.x - view.x) * real, y: about.y - (about.y - view.y) * real },
    stage,
    picture,
  )
}

/** Two fingers: what lay under each still lies under it, as far as the picture stays on the stage. */
export function pinched(
  view: View,
  stage: Size,
  picture: Size,
  from: readonly [ScreenPoint, ScreenPoint],
  to: readonly [ScreenPoint, ScreenPoint],
): View {
  const apart = ([a, b]: readonly [ScreenPoint, ScreenPoint]) => Math.max(1, Math.hypot(a.x - b.x, a.y - b.y))
  const middle = ([a, b]: readonly [ScreenPoint, ScreenPoint]) => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 })
  const nearer = zoomed(view, stage, picture, apart(to) / apart(from), middle(from))
  return moved(nearer, stage, picture, middle(to).x - middle(from).x, middle(to).y - middle(from).y)
}

export function moved(view: View, stage: Size, picture: Size, dx: number, dy: number): View {
  return within({ ...view, x: view.x + dx, y: view.y + dy }, stage, picture)
}

/** The view that has a point in sight, moved no further than it must. */
export function showing(view: View, stage: Size, picture: Size, point: PicturePoint): View {
  const at = onScreen(view, picture, point)
  const room = { x: stage.width * 0.15, y: stage.height * 0.15 }
  const dx = Math.max(room.x - at.x, 0) + Math.min(stage.width - room.x - at.x, 0)
  const dy = Math.max(room.y - at.y, 0) + Math.min(stage.height - room.y - at.y, 0)
  return dx === 0 && dy === 0 ? view : within({ ...view, x: view.x + dx, y: view.y + dy }, stage, picture)
}

/** However it is drawn, half of the picture, or half a stage of it, stays in sight. */
function within(view: View, stage: Size, picture: Size): View {
  const side = (at: number, length: number, room: number) => {
    const kept = KEPT * Math.min(length, room)
    return Math.min(Math.max(at, kept - length), room - kept)
  }
  return {
    scale: view.scale,
    x: side(view.x, picture.width * view.scale, stage.width),
    y: side(view.y, picture.height * view.scale, stage.height),
  }
}
