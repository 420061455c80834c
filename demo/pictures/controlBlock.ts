import { rubberMat } from './ground.ts'
import { castSkin, mill, oil, scratch, spotFace, tap, turn } from './machining.ts'
import { row } from './noise.ts'
import { type Camera, under } from './photograph.ts'
import { over, type Relief, raise, sink } from './relief.ts'
import { bar, box, disc, grown, joined, outline, type Place, type Shape, without } from './shapes.ts'
import type { Seat } from './unit.ts'

const THICK = 26
/** The two seats that the filter boss hides. */
const HIDDEN = ['11', '12']
const GRID = 8.4

export function controlBlock(relief: Relief, camera: Camera, seats: readonly Seat[]): void {
  rubberMat(relief, -THICK, 3)
  const placed = seats.map((seat) => {
    const z = Math.min(3, Math.max(-3, (seat.grip - 25.95) * 0.22))
    return { ...seat, z, seen: seat.at, at: under(camera, seat.at, z) }
  })
  const rim = grown(
    outline([
      [6, 112],
      [16, 124],
      [50, 129],
      [148, 126],
      [184, 119],
      [189, 104],
      [185, 92],
      [193, 78],
      [186, 66],
      [172, 46],
      [158, 13],
      [142, 12],
      [112, 10],
      [92, 9],
      [60, 14],
      [36, 12],
      [30, 32],
      [9, 44],
      [9, 58],
      [15, 78],
      [7, 98],
    ]),
    5,
  )
  const body = joined([rim, ...placed.map(({ at }) => disc(at, 9.5))], 8)
  raise(relief, body, 1, 14)
  // The pads under the seats: some stand up from the face.
  for (const { at, z } of placed)
    if (z > 0.4) raise(relief, disc(at, 9), z + 0.8, 14, { x: at[0], y: at[1], reach: 14 })

  const keepOff = joined(
    placed.map(({ at }) => disc(at, 9)),
    0,
  )
  const ways = channels(body, keepOff)
  for (const { shape, floor, near } of ways) sink(relief, shape, floor, 7, 1, near)
  castSkin(relief, 11, 0.55)
  const pads = joined(
    placed.filter(({ z }) => z > 0.4).map(({ at }) => disc(at, 9.6)),
    0,
  )
  mill(relief, without(body, pads), 0, 5)
  for (const port of ports(ways)) sink(relief, port, -26, 30, 0)
  for (const { at, z } of placed) {
    spotFace(relief, at, 7.4, z, 77 + Math.round(at[0]))
    tap(relief, at, 6, z, 20)
  }
  filterBoss(
    relief,
    camera,
    body,
    placed.filter(({ id }) => HIDDEN.includes(id)).map(({ seen }) => seen),
  )
  oil(relief, 31, 1)
  const next = row(8)
  for (let i = 0; i < 26; i++) {
    const from: Place = [next() * 190, 10 + next() * 115]
    const turned = next() * 3.1
    const long = 5 + next() * next() * 60
    scratch(relief, from, [from[0] + Math.cos(turned) * long, from[1] + Math.sin(turned) * long], 100 + i)
  }
}

/** The filter's seat across the face: a bore in the middle, an arm to each side; each arm's end comes down over half a seat. */
function filterBoss(relief: Relief, camera: Camera, body: Shape, hidden: readonly Place[]): void {
  const [one, other] = hidden
  if (!one || !other) return
  const high = 12
  const foot = (seat: Place): Place => under(camera, [seat[0], seat[1] - 15.3], high)
  const a = foot(one)
  const b = foot(other)
  const bore: Place = [97, 69.5]
  const ends = joined([box(a, 13, 11.6, 6), box(b, 13, 11.6, 6)], 0)
  const top = joined([ends, disc(bore, 12.5), bar(a, bore, 7), bar(bore, b, 7)], 12)
  const skin = { ...relief, made: new Uint8Array(relief.made.length) }
  const seats = joined(
    hidden.map((seat) => disc(seat, 8)),
    0,
  )
  const before = relief.z.slice()
  // It grows out of the face with a foot all round, but not over the seats.
  raise(skin, without(grown(top, 1.6), seats), 2.4, 2)
  raise(skin, top, high - 3, 14)
  raise(skin, grown(ends, -2.6), high, 2.2)
  raise(skin, joined([bar(a, bore, 1.4), bar(bore, b, 1.4)], 0), high - 0.6, 1.8)
  raise(skin, disc(bore, 12), high + 1, 6)
  over(skin, (x, y, i) => {
    if (body(x, y) < 0.4 || top(x, y) < 0) return
    skin.z[i] = before[i]!
    skin.made[i] = 0
  })
  castSkin(skin, 51, 0.7)
  turn(skin, disc(bore, 11), bore, high, 63, 0.7)
  sink(skin, disc(bore, 8.2), high - 1.4, 1.4, high)
  sink(skin, disc(bore, 7), high - 9, 40, high - 1)
  turn(skin, disc(bore, 7), bore, high - 9.05, 65, 0.7)
  sink(skin, disc(bore, 4.2), -18, 40, high - 9)
  for (const [x, y] of [a, b]) {
    mill(skin, disc([x, y - 1], 5), high - 0.7, 66, 30, 0.7)
    tap(skin, [x, y - 1], 3.3, high - 0.7, 9)
  }
  for (let i = 0; i < skin.made.length; i++) if (skin.made[i]) relief.made[i] = skin.made[i]!
}

/** A line with its corners cut twice, so that it bends like a way that was cast. */
function bent(path: readonly Place[]): Place[] {
  let line = [...path]
  for (let pass = 0; pass < 2; pass++) {
    const cut: Place[] = [line[0]!]
    for (let i = 0; i + 1 < line.length; i++) {
      const [ax, ay] = line[i]!
      const [bx, by] = line[i + 1]!
      cut.push([ax * 0.7 + bx * 0.3, ay * 0.7 + by * 0.3], [ax * 0.3 + bx * 0.7, ay * 0.3 + by * 0.7])
    }
    cut.push(line.at(-1)!)
    line = cut
  }
  return line
}

type Channel = {
  readonly shape: Shape
  readonly path: readonly Place[]
  readonly floor: number
  readonly near: { x: number; y: number; reach: number }
}

/** Oil ways on a crooked grid: short worms with walls between them, away from the seats and the rim. */
function channels(body: Shape, keepOff: Shape): Channel[] {
  const next = row(42)
  const free = (x: number, y: number) => body(x, y) < -6.5 && keepOff(x, y) > 2.4
  const cell = (c: number, r: number): Place => [
    4 + c * GRID + Math.sin(r * 1.1) * 1.2,
    8 + r * GRID + Math.sin(c * 0.9 + 1) * 1.5,
  ]
  const used = new Set<string>()
  const made: Channel[] = []
  for (let r = 0; r < 16; r++) {
    for (let c = 0; c < 24; c++) {
      let at: [number, number] = [c, r]
      const path: Place[] = []
      const goal = 2 + Math.floor(next() * 8)
      let turned = next() < 0.65 ? 0 : 1
      while (path.length < goal) {
        const place = cell(...at)
        if (used.has(at.join()) || !free(...place)) break
        used.add(at.join())
        path.push(place)
        if (next() < 0.35) turned = 1 - turned
        const step = turned === 0 ? [1, 0] : [0, 1]
        at = [at[0] + step[0]!, at[1] + step[1]!]
        if (used.has(at.join()) || !free(...cell(...at)))
          at = [at[0] - step[0]! + step[1]!, at[1] - step[1]! + step[0]!]
      }
      if (path.length === 0) continue
      const half = 2.5 + next() * 0.5
      const line = bent(path)
      const parts = line.map((place, i) => bar(line[Math.max(0, i - 1)]!, place, half))
      const xs = path.map(([x]) => x)
      const ys = path.map(([, y]) => y)
      const near = {
        x: (Math.min(...xs) + Math.max(...xs)) / 2,
        y: (Math.min(...ys) + Math.max(...ys)) / 2,
        reach: Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)) / 2 + 6,
      }
      made.push({ path, shape: without(joined(parts, 0), keepOff), floor: -6 - next() * 8, near })
    }
  }
  return made
}

/** Bores that go on into the block from one end of an oil way. */
function ports(ways: readonly Channel[]): Shape[] {
  const next = row(90)
  return ways
    .filter(() => next() < 0.45)
    .map(({ path }) => disc(next() < 0.5 ? path[0]! : path.at(-1)!, 1.5 + next() * 0.6))
}
