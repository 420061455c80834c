import { rubberMat } from './ground.ts'
import { castSkin, mill, oil, scratch, spotFace, tap } from './machining.ts'
import { row } from './noise.ts'
import { type Camera, under } from './photograph.ts'
import { raise, type Relief, sink } from './relief.ts'
import { bar, box, disc, grown, joined, outline, type Place, type Shape, without } from './shapes.ts'

const THICK = 26
/** The two seats that the filter boss hides. */
const HIDDEN = ['11', '12']
const GRID = 8.4

export type Seat = { readonly id: string; readonly at: Place; readonly grip: number }

export function controlBlock(relief: Relief, camera: Camera, seats: readonly Seat[]): void {
  rubberMat(relief, -THICK, 3)
  const placed = seats.map((seat) => {
    const z = Math.min(3, Math.max(-3, (seat.grip - 25) * 0.22))
    return { ...seat, z, seen: seat.at, at: under(camera, seat.at, z) }
  })
  const rim = grown(
    outline([[6, 112], [16, 124], [50, 129], [148, 126], [184, 119], [189, 104], [185, 92], [193, 78], [186, 66], [172, 46], [158, 13], [142, 12], [112, 10], [92, 9], [60, 14], [36, 12], [30, 32], [9, 44], [9, 58], [15, 78], [7, 98]]),
    5,
  )
  const body = joined([rim, ...placed.map(({ at }) => disc(at, 9.5))], 8)
  raise(relief, body, 1, 14)
  // The pads under the seats: some stand up from the face.
  for (const { at, z } of placed) if (z > 0.4) raise(relief, disc(at, 9), z + 0.8, 14, { x: at[0], y: at[1], reach: 14 })

  const keepOff = joined(placed.map(({ at }) => disc(at, 9)), 0)
  for (const { shape, floor, near } of channels(body, keepOff)) sink(relief, shape, floor, 7, 1, near)
  castSkin(relief, 11, 0.55)
  const pads = joined(placed.filter(({ z }) => z > 0.4).map(({ at }) => disc(at, 9.6)), 0)
  mill(relief, without(body, pads), 0, 5)
  for (const port of ports(body, keepOff)) sink(relief, port, -22, 30, 0)
  for (const { at, z } of placed) {
    spotFace(relief, at, 7.4, z, 77 + Math.round(at[0]))
    tap(relief, at, 6, z, 20)
  }
  filterBoss(relief, camera, placed.filter(({ id }) => HIDDEN.includes(id)).map(({ seen }) => seen))
  oil(relief, 31, 0.8)
  const next = row(8)
  for (let i = 0; i < 26; i++) {
    const from: Place = [next() * 190, 10 + next() * 115]
    const turned = next() * 3.1
    const long = 5 + next() * next() * 60
    scratch(relief, from, [from[0] + Math.cos(turned) * long, from[1] + Math.sin(turned) * long], 100 + i)
  }
}

/** A cast rail over the face with a round boss at each end; each boss comes down over half a seat. */
function filterBoss(relief: Relief, camera: Camera, hidden: readonly Place[]): void {
  const [one, other] = hidden
  if (!one || !other) return
  const high = 13
  const ends = [one, other].map(([x, y]) => under(camera, [x, y - 15.2], high))
  const [a, b] = ends as [Place, Place]
  const rail = joined([disc(a, 14), disc(b, 14), bar(a, b, 6.5)], 14)
  const before = relief.made.slice()
  const skin = { ...relief, made: new Uint8Array(relief.made.length) }
  raise(skin, rail, high, 22)
  for (const [x, y] of ends) raise(skin, disc([x, y], 9), high + 3, 6)
  castSkin(skin, 51, 0.7)
  for (const at of ends) {
    mill(skin, disc(at, 8.6), high + 2.2, 63, 30, 0.7)
    sink(skin, disc(at, 4.6), high - 12, 20, high + 2.2)
  }
  for (let i = 0; i < before.length; i++) relief.made[i] = skin.made[i] || before[i]!
}

type Channel = { readonly shape: Shape; readonly floor: number; readonly near: { x: number; y: number; reach: number } }

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
        if (used.has(at.join()) || !free(...cell(...at))) at = [at[0] - step[0]! + step[1]!, at[1] - step[1]! + step[0]!]
      }
      if (path.length === 0) continue
      const half = 2.5 + next() * 0.5
      const parts = path.map((place, i) => bar(path[Math.max(0, i - 1)]!, place, half))
      const xs = path.map(([x]) => x)
      const ys = path.map(([, y]) => y)
      const near = {
        x: (Math.min(...xs) + Math.max(...xs)) / 2,
        y: (Math.min(...ys) + Math.max(...ys)) / 2,
        reach: Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)) / 2 + 6,
      }
      made.push({ shape: without(joined(parts, 0), keepOff), floor: -6 - next() * 8, near })
    }
  }
  return made
}

/** Bores that go on into the block from the floor of an oil way. */
function ports(body: Shape, keepOff: Shape): Shape[] {
  const next = row(90)
  const made: Shape[] = []
  for (let tries = 0; tries < 90 && made.length < 14; tries++) {
    const at: Place = [next() * 190, 10 + next() * 115]
    if (body(...at) > -9 || keepOff(...at) < 3) continue
    made.push(next() < 0.7 ? disc(at, 1.6 + next() * 1.4) : box(at, 4.2, 2.1, 2.1))
  }
  return made
}
