/** A bolt seen from the side, its axis to the right, in mm: for the tray of a sheet and beside the holes of a board. */
import type { Kind } from '@gripbook/engine'
import { hasStudEnd, headShape, loneBolt, STUD_END, threadOf } from '@gripbook/print'
import type { Look, Pen, Place } from '../sheet.ts'

/** Root diameter of a bolt's thread in pitches under the nominal one: d3 = d − 1.226869 P. @source ISO 724 and ISO 68-1 profile (d3: ISO 898-1) */
const ROOT = 1.226869

export type SideView = {
  /** Left of the head's underside, and right of it, mm. */
  head: number
  length: number
  /** The most that it stands off its axis. */
  radius: number
  /** The length is not known: the end is broken off. */
  broken: boolean
  areas: { outline: readonly Place[]; thin: boolean }[]
  lines: { line: readonly Place[]; hidden: boolean }[]
}

/** x along the axis from the head's underside to the tip, y across it. Heads whose size is not stated have the usual proportions and are drawn thin. */
export function sideView(kind: Kind): SideView {
  const thread = threadOf(kind.thread)
  const { diameter: d, pitch } = thread
  const { length, known, threadLength, tip } = loneBolt(kind, thread)
  const shape = headShape(kind.head, d)
  // The head stands upright in its own drawing: x across, y up from its underside.
  const laid = ([x, y]: Place): Place => [-y, x]
  const view: SideView = {
    head: shape.height,
    length,
    radius: Math.max(shape.radius, d / 2),
    broken: !known,
    areas: [],
    lines: [],
  }
  const half = d / 2
  const end = (from: number, to: number, chamfer: number, thin: boolean) => {
    const root = Math.max(0.2 * d, half - (ROOT * pitch) / 2)
    const full = to - Math.sign(to - from) * Math.min(chamfer, Math.abs(to - from))
    const outline: Place[] = [
      [from, -half],
      [full, -half],
      [to, -root],
      [to, root],
      [full, half],
      [from, half],
    ]
    view.areas.push({ outline, thin })
    for (const side of [-root, root])
      view.lines.push({
        line: [
          [from, side],
          [full, side],
        ],
        hidden: false,
      })
    view.lines.push({
      line: [
        [full, -half],
        [full, half],
      ],
      hidden: false,
    })
  }
  const second = shape.form === 'nut' ? 0.5 : hasStudEnd(kind.features) ? STUD_END : 0
  if (second > 0) {
    end(-shape.height, -shape.height - second * d, pitch, true)
    view.head += second * d
  }
  if (!known) {
    const zigzag = [-1, -0.33, 0.33, 1].map((y, i): Place => [length + (i % 2 === 0 ? 0.25 : -0.25) * d, y * half])
    view.areas.push({ outline: [[0, -half], ...zigzag, [0, half]], thin: false })
  } else {
    const threadFrom = length - threadLength
    if (threadFrom > 0)
      view.areas.push({
        outline: [
          [0, -half],
          [threadFrom, -half],
          [threadFrom, half],
          [0, half],
        ],
        thin: false,
      })
    end(threadFrom, length, tip, false)
  }
  view.areas.push({ outline: shape.outline.map(laid), thin: !shape.stated })
  for (const [a, b] of shape.edges) view.lines.push({ line: [laid(a), laid(b)], hidden: false })
  for (const [a, b] of shape.hidden) view.lines.push({ line: [laid(a), laid(b)], hidden: true })
  return view
}

/** Draws it with the head's left end at `x`, its axis at `y`, to a scale (1: true size). `dashed`: it is not the bolt that was found to belong. */
export function drawSideView(pen: Pen, view: SideView, x: number, y: number, scale: number, dashed = false): void {
  const at = ([along, across]: Place): Place => [x + (view.head + along) * scale, y + across * scale]
  const width = Math.max(0.15, Math.min(0.3, 0.3 * scale))
  const dash = dashed ? ({ dash: [1, 0.6] } as const) : {}
  for (const { outline, thin } of view.areas) {
    const look: Look = {
      stroke: '#000000',
      width: thin ? width / 2 : width,
      fill: dashed ? '#ffffff' : '#e9e9e9',
      ...dash,
    }
    pen.area(outline.map(at), look)
  }
  for (const { line, hidden } of view.lines)
    pen.line(line.map(at), { stroke: '#000000', width: width / 2, ...(hidden ? { dash: [0.6, 0.4] } : {}) })
}
