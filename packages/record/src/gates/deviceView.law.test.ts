import { expect, test } from 'vitest'
import { canonical } from '../canonical.ts'
import { knew } from '../clash.ts'
import { fold } from '../fold.ts'
import { DEVICES, history, UNIT } from '../testing/bench.ts'
import type { FoldedUnit } from '../unit.ts'
import { type BenchFace, benchFace } from './benchFace.ts'
import { deviceView } from './deviceView.ts'
import { standingOf } from './standing.ts'

const sorted = (bench: BenchFace | undefined) =>
  bench === undefined ? null : { ...bench, holes: bench.holes.toSorted((a, b) => (a.id < b.id ? -1 : 1)) }
const clashesOf = ({ clashes }: FoldedUnit) => clashes.map(({ place, field }) => canonical([...place, field])).sort()

test('what a device is carried on to know is what the fold makes of the entries that it knew', () => {
  for (let seed = 0; seed < 250; seed++) {
    // the sample of a settling names a hole that its device may never have heard of; who settles a clash has seen it
    const made = history(seed, 45).made.filter(({ body }) => body.reason !== 'both were wrong')
    const folded = fold(UNIT, made)
    const standing = standingOf(folded)
    const byDevice = new Map(DEVICES.map((id) => [id, standing.filter(({ event }) => event.device === id)]))
    for (const device of DEVICES) {
      const view = deviceView(UNIT, byDevice)
      for (const { event } of byDevice.get(device)!) {
        view.learn(event)
        const known = fold(
          UNIT,
          standing.flatMap((other) => (knew(event, other.event) ? [other.event] : [])),
        )
        const said = `seed ${seed}, entry ${event.seq} of ${device}`
        for (const face of ['pan', 'pump-cover'])
          expect(sorted(view.bench(face)), said).toEqual(sorted(benchFace(known, face)))
        const own = view.folded()
        expect(own.things, said).toEqual(known.things)
        expect(own.faces, said).toEqual(known.faces)
        expect(clashesOf(own), said).toEqual(clashesOf(known))
        expect(view.calibratedUntil('w4'), said).toBe(known.things.instrument.w4?.calibratedUntil?.value)
      }
    }
  }
})
