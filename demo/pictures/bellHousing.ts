import { rubberMat } from './ground.ts'
import { castSkin, mill, oil, scratch, spotFace, tap, turn } from './machining.ts'
import { row } from './noise.ts'
import { type Camera, under } from './photograph.ts'
import { over, paint, type Relief, raise, sink } from './relief.ts'
import { arc, bar, disc, joined, outline, type Place, without } from './shapes.ts'
import type { Seat } from './unit.ts'

const MIDDLE: Place = [180, 180]

/** A wide bell seen into its mouth: the bolted rim, the falling wall with ribs, the deep floor with the bearing bore and windows. */
export function bellHousing(relief: Relief, camera: Camera, seats: readonly Seat[]): void {
  rubberMat(relief, -46, 61)
  const placed = seats.map((seat) => {
    const z = Math.max(-4, Math.min(4, (seat.grip - 33.4) * 0.25))
    return { z, at: under(camera, seat.at, z) }
  })
  const ring = outline(placed.map(({ at }) => at))
  const body = joined([(x, y) => ring(x, y) - 3, disc(MIDDLE, 166), ...placed.map(({ at }) => disc(at, 15))], 30)
  const inside = disc(MIDDLE, 146)
  raise(relief, body, 1, 14)
  // The bell: a cone that goes down to the floor.
  over(relief, (x, y, i) => {
    const d = inside(x, y)
    if (d >= 0) return
    const cone = Math.max(-40, d * 2.2 - 3)
    const slope = Math.min(cone, 1 + d * 6)
    relief.z[i] = Math.min(relief.z[i]!, slope)
  })
  raise(relief, disc(MIDDLE, 66), -26, 2.2)
  for (let k = 0; k < 10; k++) {
    const turned = ((k * 36 + 11) * Math.PI) / 180
    const from: Place = [180 + Math.cos(turned) * 58, 180 + Math.sin(turned) * 58]
    const to: Place = [180 + Math.cos(turned) * 150, 180 + Math.sin(turned) * 150]
    raise(relief, bar(from, to, 3), -22, 11)
  }
  raise(relief, joined([disc([92, 226], 15), bar([92, 226], [50, 240], 7)], 8), -20, 4)
  raise(relief, disc([256, 118], 13), -22, 4)
  raise(relief, disc([118, 96], 11), -24, 4)
  for (const { at, z } of placed)
    if (z > 0.4) raise(relief, disc(at, 13), z + 0.8, 14, { x: at[0], y: at[1], reach: 18 })
  const windows = [arc(MIDDLE, 106, 13, 20, 38), arc(MIDDLE, 108, 12, 272, 287), arc(MIDDLE, 92, 8, 128, 140)]
  for (const window of windows) sink(relief, window, -44, 8, -30)
  castSkin(relief, 71, 1.1)
  for (const window of windows) {
    over(relief, (x, y, i) => {
      if (window(x, y) > -1.2) return
      relief.z[i] = -46
      relief.made[i] = 0
      paint(relief, i, [0.035, 0.034, 0.033])
      relief.gloss[i] = 0.04
    })
  }
  const pads = joined(
    placed.filter(({ z }) => z > 0.4).map(({ at }) => disc(at, 14)),
    0,
  )
  mill(relief, without(body, joined([pads, disc(MIDDLE, 143)], 0)), 0, 25, 120, 1.6)
  // The bearing's seat, turned, with a groove and the shaft's opening.
  turn(relief, disc(MIDDLE, 62), MIDDLE, -26.4, 14, 1.4)
  sink(relief, disc(MIDDLE, 50), -38, 40, -26)
  turn(relief, disc(MIDDLE, 50), MIDDLE, -38.01, 15, 1.3)
  sink(relief, disc(MIDDLE, 33), -46, 40, -38)
  over(relief, (x, y, i) => {
    if (Math.hypot(x - 180, y - 180) > 32.6) return
    relief.z[i] = -60
    relief.made[i] = 0
    paint(relief, i, [0.04, 0.038, 0.036])
    relief.gloss[i] = 0.05
  })
  for (let k = 0; k < 6; k++) {
    const turned = ((k * 60 + 24) * Math.PI) / 180
    tap(relief, [180 + Math.cos(turned) * 56, 180 + Math.sin(turned) * 56], 5, -26.4, 14)
  }
  for (const [at, z, wide] of [
    [[92, 226], -20.5, 11],
    [[256, 118], -22.5, 9.5],
    [[118, 96], -24.5, 7.5],
  ] as const) {
    mill(relief, disc(at, wide), z, 91, 30, 1)
    sink(relief, disc(at, wide * 0.55), z - 16, 30, z)
  }
  for (const at of [
    [240, 331],
    [34, 128],
  ] as const)
    sink(relief, disc(at, 4.4), -16, 40, 0)
  for (const { at, z } of placed) {
    spotFace(relief, at, 10.5, z, 140 + Math.round(at[0]))
    tap(relief, at, 8.6, z, 24)
  }
  oil(relief, 83, 0.9)
  const next = row(28)
  for (let k = 0; k < 30; k++) {
    const around = next() * 6.28
    const from: Place = [180 + Math.cos(around) * (145 + next() * 25), 180 + Math.sin(around) * (145 + next() * 25)]
    const turned = next() * 3.1
    const long = 6 + next() * next() * 60
    scratch(relief, from, [from[0] + Math.cos(turned) * long, from[1] + Math.sin(turned) * long], 300 + k)
  }
}
