import { woodenBench } from './ground.ts'
import { castSkin, mill, oil, scratch, spotFace, tap, turn } from './machining.ts'
import { row, smooth } from './noise.ts'
import { type Camera, under } from './photograph.ts'
import { over, type Relief, raise, sink, stain } from './relief.ts'
import { arc, bar, disc, joined, type Place, without } from './shapes.ts'
import type { Seat } from './unit.ts'

const MIDDLE: Place = [75, 75]

/** A round cover with its seats in lobes round the edge, ribs to the middle, a shaft bore with a seal's seat, and two kidney-shaped ports. */
export function pumpCover(relief: Relief, camera: Camera, seats: readonly Seat[]): void {
  woodenBench(relief, -24, 5)
  const placed = seats.map((seat) => {
    const z = (seat.grip - 20) * 0.28
    return { z, at: under(camera, seat.at, z) }
  })
  const body = joined([disc(MIDDLE, 62), ...placed.map(({ at }) => disc(at, 11.5)), bar([128, 92], [140, 99], 9)], 16)
  raise(relief, body, -3.6, 12)
  for (const { at, z } of placed) {
    const near = { x: at[0], y: at[1], reach: 22 }
    raise(relief, disc(at, 10.5), z + 0.7, 6, near)
    raise(relief, bar(at, [at[0] + (MIDDLE[0] - at[0]) * 0.4, at[1] + (MIDDLE[1] - at[1]) * 0.4], 3), z - 1.5, 3, {
      ...near,
      reach: 40,
    })
  }
  const pads = joined(
    placed.map(({ at }) => disc(at, 12)),
    0,
  )
  raise(relief, disc(MIDDLE, 46), 1, 5)
  const ports = [arc(MIDDLE, 33, 4.6, 28, 148), arc(MIDDLE, 33, 4, 206, 322)]
  for (const port of ports) sink(relief, port, -13, 6, 1)
  sink(relief, arc(MIDDLE, 33, 2.2, 60, 110), -20, 12, -8)
  sink(relief, arc(MIDDLE, 33, 2, 226, 262), -20, 12, -8)
  castSkin(relief, 21, 0.7)
  turn(relief, without(disc(MIDDLE, 47), pads), MIDDLE, 0, 9, 0.9)
  // The seal's seat and the shaft's bore, with a turned chamfer.
  sink(relief, disc(MIDDLE, 23.2), -1, 1.1, 0)
  sink(relief, disc(MIDDLE, 22.2), -7, 40, 0)
  turn(relief, disc(MIDDLE, 22.2), MIDDLE, -7.01, 12, 0.7)
  sink(relief, disc(MIDDLE, 14.4), -8.4, 1.4, -7)
  sink(relief, disc(MIDDLE, 13.2), -30, 60, -7)
  const bushing = without(disc(MIDDLE, 13.2), disc(MIDDLE, 11.4))
  over(relief, (x, y, i) => {
    if (bushing(x, y) > 0) return
    relief.z[i] = -9
    relief.colour.set([0.42, 0.3, 0.13], i * 3)
    relief.gloss[i] = 0.8
  })
  sink(relief, disc(MIDDLE, 11.4), -40, 60, -7)
  for (const at of [
    [112, 89],
    [39, 62],
  ] as const) {
    sink(relief, disc(at, 3.1), -14, 40, 0)
  }
  sink(relief, disc([138, 98], 4.2), -14, 20, 0)
  mill(relief, disc([138, 98], 6.6), -4, 33, 20, 0.6)
  for (const { at, z } of placed) {
    spotFace(relief, at, 8.6, z, 40 + Math.round(at[0]))
    tap(relief, at, 8, z, 22)
  }
  oil(relief, 64, 0.95)
  // Rests of the gasket along the edge of the turned face.
  over(relief, (x, y, i) => {
    const off = Math.abs(Math.hypot(x - 75, y - 75) - 43.4)
    const left = smooth(x * 0.12, y * 0.12, 88) + 0.5 * smooth(x * 0.6, y * 0.6, 89)
    if (relief.made[i] !== 2 || off > 2.2 || left < 0.34) return
    const share = Math.min(1, (left - 0.34) * 6)
    relief.z[i] = relief.z[i]! + 0.14 * share
    stain(relief, i, [0.075, 0.1, 0.09], share * 0.9)
    relief.gloss[i] = 0.75 - share * 0.68
    relief.rough[i] = 0.7
  })
  const next = row(18)
  for (let k = 0; k < 18; k++) {
    const from: Place = [20 + next() * 110, 20 + next() * 110]
    const turned = next() * 3.1
    const long = 4 + next() * next() * 45
    scratch(relief, from, [from[0] + Math.cos(turned) * long, from[1] + Math.sin(turned) * long], 200 + k)
  }
}
