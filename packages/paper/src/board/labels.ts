/** Where the words and the bolt of each hole stand on a board: beside it, clear of every other hole, of each other and of the sheet's edge. */
import { grown } from '../base/boxes.ts'
import type { Box, Place } from '../sheet.ts'

export type ToLabel = {
  at: Place
  /** Kept free around the hole, mm. */
  clear: number
  width: number
  height: number
}

export type Labelled = {
  boxes: Box[]
  /** How much of the labels lies on something else or off the sheet, mm². */
  amiss: number
}

const GAP = 0.8
const DIRECTIONS = 24
/** Distances from the hole, mm, nearest first. */
const STEPS = [0, 3, 6, 10, 15, 21, 28]
const ROUNDS = 6
/** mm by which a number must be nearer to its own hole's ring than to any other. */
const DOUBT = 4
/**
 * What a label costs: each mm² amiss, each mm away from its hole, standing to its left, standing so that it could be meant for another hole,
 * each line of the cover under it, and each other label that its line to its hole, or whose line, strikes through.
 */
const COST = { amiss: 100, away: 1, left: 0.4, doubtful: 9, crossed: 5, struck: 60 }

/**
 * Places one box for each hole inside `bounds`. Each takes the cheapest of its places while the others stand, the most hemmed in first, for some
 * rounds. The same input gives the same places.
 */
export function placeLabels(
  labels: readonly ToLabel[],
  bounds: Box,
  outlines: readonly (readonly Place[])[] = [],
): Labelled {
  const edges = outlines.flatMap((outline) =>
    outline.map((from, i): [Place, Place] => [from, outline[(i + 1) % outline.length]!]),
  )
  const candidates = labels.map((label) =>
    candidatesOf(label, labels, edges)
      .map(({ box, away }) => {
        const fixed = fixedCost(box, labels, bounds)
        return { box, line: lineTo(box, label), wide: grown(box, GAP), fixed, own: fixed * COST.amiss + away }
      })
      .sort((a, b) => a.own - b.own),
  )
  const chosen: ({ box: Box; line: [Place, Place] | undefined } | undefined)[] = labels.map(() => undefined)
  const hemmed = candidates.map((each) => each.filter(({ fixed }) => fixed === 0).length)
  const order = labels.map((_, i) => i).sort((a, b) => hemmed[a]! - hemmed[b]! || a - b)
  for (let round = 0; round < ROUNDS; round++) {
    let moved = false
    for (const i of order) {
      let best: { box: Box; line: [Place, Place] | undefined; cost: number } | undefined
      for (const { box, line, wide, own } of candidates[i]!) {
        if (best && own >= best.cost) break
        let cost = own
        for (const [j, other] of chosen.entries()) {
          if (j === i || !other) continue
          cost += overlap(wide, other.box) * COST.amiss
          if (line && crosses(other.box, ...line)) cost += COST.struck
          if (other.line && crosses(box, ...other.line)) cost += COST.struck
        }
        if (!best || cost < best.cost) best = { box, line, cost }
      }
      if (chosen[i]?.box !== best!.box) moved = true
      chosen[i] = best!
    }
    if (!moved) break
  }
  const boxes = chosen.map((each) => each!.box)
  let amiss = 0
  for (const [i, box] of boxes.entries()) {
    amiss += fixedCost(box, labels, bounds)
    for (const other of boxes.slice(i + 1)) amiss += overlap(box, other)
  }
  return { boxes, amiss }
}

/** The line that leads from a hole's clear ring to the nearest point of its label; none where they touch. */
export function lineTo(box: Box, { at: [x, y], clear }: Pick<ToLabel, 'at' | 'clear'>): [Place, Place] | undefined {
  const to: Place = [Math.min(Math.max(x, box.x), box.x + box.width), Math.min(Math.max(y, box.y), box.y + box.height)]
  const length = Math.hypot(to[0] - x, to[1] - y)
  if (length < clear + 0.3) return undefined
  return [[x + ((to[0] - x) * clear) / length, y + ((to[1] - y) * clear) / length], to]
}

function candidatesOf(
  label: ToLabel,
  labels: readonly ToLabel[],
  edges: readonly [Place, Place][],
): { box: Box; away: number }[] {
  const {
    at: [x, y],
    clear,
    width,
    height,
  } = label
  return STEPS.flatMap((step) =>
    Array.from({ length: DIRECTIONS }, (_, i) => {
      const angle = (i * 2 * Math.PI) / DIRECTIONS
      const [dx, dy] = [Math.cos(angle), Math.sin(angle)]
      const far = reach(dx, dy, width / 2, height / 2, clear + GAP + step)
      const box = { x: x + dx * far - width / 2, y: y + dy * far - height / 2, width, height }
      // To the right of its hole a label is found at once, so that costs least.
      const doubtful = isDoubtful(box, label, labels) ? COST.doubtful : 0
      const crossed = COST.crossed * edges.filter(([from, to]) => crosses(box, from, to)).length
      return { box, away: COST.away * step + COST.left * (1 - dx) + doubtful + crossed }
    }),
  )
}

/** A label begins with the hole's number, at its upper left corner: another hole is as near to that as its own. */
function isDoubtful({ x, y }: Box, label: ToLabel, labels: readonly ToLabel[]): boolean {
  const number: Place = [x + 2, y + 2.5]
  const far = ({ at, clear }: ToLabel) => Math.hypot(number[0] - at[0], number[1] - at[1]) - clear
  return labels.some((other) => other !== label && far(other) < far(label) + DOUBT)
}

/** How far the middle of a box must be moved in a direction until it is so many mm clear of the start. */
function reach(dx: number, dy: number, halfWidth: number, halfHeight: number, clear: number): number {
  const distance = (far: number) =>
    Math.hypot(Math.max(0, Math.abs(dx * far) - halfWidth), Math.max(0, Math.abs(dy * far) - halfHeight))
  let far = 0
  for (let step = halfWidth + halfHeight + clear; step > 0.05; step /= 2) {
    if (distance(far + step) < clear) far += step
  }
  return far + 0.1
}

/** mm² of the box on clear rings and off the bounds. */
function fixedCost(box: Box, labels: readonly ToLabel[], bounds: Box): number {
  let cost = box.width * box.height - overlap(box, bounds)
  if (cost < 1e-9) cost = 0
  for (const { at, clear } of labels) cost += onRing(box, at, clear)
  return cost
}

/** How far a box reaches into a ring, as an area: depth times its width there. */
function onRing({ x, y, width, height }: Box, [cx, cy]: Place, radius: number): number {
  const dx = Math.max(x - cx, 0, cx - (x + width))
  const dy = Math.max(y - cy, 0, cy - (y + height))
  const depth = radius - Math.hypot(dx, dy)
  return depth <= 1e-6 ? 0 : 2 * depth * Math.sqrt(Math.max(0, 2 * radius * depth - depth * depth))
}

/** Whether a line has a piece inside the box (Liang and Barsky's clipping). */
export function crosses({ x, y, width, height }: Box, [x1, y1]: Place, [x2, y2]: Place): boolean {
  let [from, to] = [0, 1]
  const sides = [
    [x1 - x2, x1 - x],
    [x2 - x1, x + width - x1],
    [y1 - y2, y1 - y],
    [y2 - y1, y + height - y1],
  ] as const
  for (const [along, inside] of sides) {
    if (along === 0) {
      if (inside < 0) return false
      continue
    }
    if (along < 0) from = Math.max(from, inside / along)
    else to = Math.min(to, inside / along)
  }
  return from <= to
}

function overlap(a: Box, b: Box): number {
  const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)
  const down = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y)
  return across > 0 && down > 0 ? across * down : 0
}
