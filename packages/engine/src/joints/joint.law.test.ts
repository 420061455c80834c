import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { intervalOf } from '../quantity/interval.ts'
import { readTorque } from '../quantity/readText.ts'
import { readThread } from '../threads/index.ts'
import { boltClass } from './boltClass.ts'
import { engagementRange } from './engagement.ts'
import { CONDITIONS, frictionOf, statedFriction } from './friction.ts'
import { bearingRing } from './head.ts'
import { joint } from './joint.ts'
import { MATERIAL_NAMES, parentMaterial } from './parentMaterial.ts'
import { assemblyPreload, assemblyStress, tighteningTorque } from './preload.ts'
import { bestShearAreas, worstShearAreas } from './stripping.ts'
import { thread } from './testing/check.ts'
import { clampFor, torqueFor } from './torque.ts'
import { type JointLoads, utilisations } from './utilisation.ts'
import { verdictsOn } from './verdict.ts'

const NAMES = [
  'M5',
  'M6',
  'M8',
  'M8x1',
  'M10',
  'M10x1.25',
  'M12',
  'M16',
  'M20',
  '1/4-20',
  '5/16-18',
  '3/8-24',
  '1/2-13',
]
/** Weakest first, in yield and in strength. */
const CLASSES = ['4.6', '5.6', '5.8', '6.8', '8.8', '10.9', '12.9']

const anyThread = fc.constantFrom(...NAMES).map(thread)
const anyMu = fc.double({ min: 0.04, max: 0.35, noNaN: true })
const anyTorque = fc.double({ min: 0.5, max: 300, noNaN: true })
const more = fc.double({ min: 1.001, max: 3, noNaN: true })
const runs = { seed: 2026, numRuns: 300 }

const anyLoads: fc.Arbitrary<JointLoads> = fc
  .record({
    thread: anyThread,
    mark: fc.constantFrom(...CLASSES),
    torque: anyTorque,
    condition: fc.constantFrom(...CONDITIONS),
    material: fc.constantFrom(...MATERIAL_NAMES),
    ratio: fc.double({ min: 0.5, max: 3, noNaN: true }),
  })
  .map(({ thread, mark, torque, condition, material, ratio }) => ({
    thread,
    strength: boltClass(mark, thread)!,
    ring: bearingRing(thread)!,
    friction: frictionOf(condition),
    torque: { lo: torque, hi: torque },
    deviation: 0.04,
    parent: parentMaterial(material)!,
    seat: parentMaterial(material)!,
    engagement: { lo: ratio * thread.diameter, hi: ratio * thread.diameter },
  }))

const shares = (loads: JointLoads) => Object.fromEntries(utilisations(loads).map(({ part, share }) => [part, share]))

describe('torque and clamp load', () => {
  test('[JO2] torque to clamp to torque returns the torque', () => {
    fc.assert(
      fc.property(
        anyThread,
        anyMu,
        anyMu,
        anyTorque,
        fc.double({ min: 6, max: 40, noNaN: true }),
        (t, mu, head, m, bearing) => {
          expect(torqueFor(t, bearing, clampFor(t, bearing, m, mu, head), mu, head)).toBeCloseTo(m, 9)
        },
      ),
      runs,
    )
  })

  test('the 90 % torque leaves the 90 % preload, and its stress is 90 % of yield', () => {
    fc.assert(
      fc.property(
        anyThread,
        anyMu,
        fc.constantFrom('VDI 2230:2001 and later' as const, 'VDI 2230:1986' as const),
        (t, mu, edition) => {
          const { friction } = bearingRing(t)!
          const m = tighteningTorque(t, friction, 640, mu, 0.9, edition)
          const load = clampFor(t, friction, m, mu)
          expect(load).toBeCloseTo(assemblyPreload(t, 640, mu, 0.9, edition), 6)
          expect(assemblyStress(t, load, mu, edition)).toBeCloseTo(576, 6)
        },
      ),
      runs,
    )
  })
})

describe('utilisation', () => {
  test('[JO3] every one rises with torque', () => {
    fc.assert(
      fc.property(anyLoads, more, (loads, factor) => {
        const raised = { ...loads, torque: { lo: loads.torque.lo * factor, hi: loads.torque.hi * factor } }
        const [before, after] = [shares(loads), shares(raised)]
        for (const part of Object.keys(before))
          for (const end of ['lo', 'middle', 'hi'] as const)
            expect(after[part]![end]).toBeGreaterThan(before[part]![end])
      }),
      runs,
    )
  })

  test('[JO4] that of both threads falls with engagement, the others do not change', () => {
    fc.assert(
      fc.property(anyLoads, more, (loads, factor) => {
        const longer = { lo: loads.engagement!.lo * factor, hi: loads.engagement!.hi * factor }
        const [before, after] = [shares(loads), shares({ ...loads, engagement: longer })]
        for (const part of Object.keys(before))
          for (const end of ['lo', 'middle', 'hi'] as const)
            if (part.startsWith('thread')) expect(after[part]![end]).toBeLessThan(before[part]![end])
            else expect(after[part]![end]).toBe(before[part]![end])
      }),
      runs,
    )
  })

  test('[JO4] that of the bolt falls, or stays, as its class rises', () => {
    fc.assert(
      fc.property(anyLoads, fc.nat(CLASSES.length - 2), (loads, i) => {
        const of = (mark: string) => shares({ ...loads, strength: boltClass(mark, loads.thread)! })
        const [weaker, stronger] = [of(CLASSES[i]!), of(CLASSES[i + 1]!)]
        for (const part of ['bolt to yield', 'bolt to break', 'thread of the bolt'])
          expect(stronger[part]!.middle).toBeLessThanOrEqual(weaker[part]!.middle)
      }),
      runs,
    )
  })

  test('its ends and its middle are in order', () => {
    fc.assert(
      fc.property(anyLoads, (loads) => {
        for (const { share, load, limit } of utilisations(loads)) {
          expect(share.lo).toBeLessThanOrEqual(share.middle)
          expect(share.middle).toBeLessThanOrEqual(share.hi)
          expect(load.lo).toBeLessThan(load.hi)
          expect(limit.lo).toBeLessThanOrEqual(limit.hi)
        }
      }),
      runs,
    )
  })

  test('a wider friction range never narrows it', () => {
    fc.assert(
      fc.property(anyLoads, (loads) => {
        const narrow = { ...loads, friction: statedFriction({ lo: 0.11, hi: 0.15 })! }
        const wide = { ...loads, friction: statedFriction({ lo: 0.08, hi: 0.2 })! }
        for (const [part, share] of Object.entries(shares(narrow))) {
          expect(shares(wide)[part]!.lo).toBeLessThanOrEqual(share.lo)
          expect(shares(wide)[part]!.hi).toBeGreaterThanOrEqual(share.hi)
        }
      }),
      { ...runs, numRuns: 100 },
    )
  })
})

describe('verdicts', () => {
  const ORDER = [
    'would break the bolt',
    'would strip the case',
    'would yield the bolt',
    'not for this size',
    'high',
    'low',
    'in the usual band',
  ]

  test('stand worst first, never twice, never none, each with a reason', () => {
    fc.assert(
      fc.property(anyLoads, (loads) => {
        const said = verdictsOn(loads, utilisations(loads))
        const places = said.map(({ verdict }) => ORDER.indexOf(verdict))
        expect(places).not.toContain(-1)
        expect(places.length).toBeGreaterThan(0)
        expect(places).toEqual([...new Set(places)].sort((a, b) => a - b))
        for (const { why } of said) expect(why.length).toBeGreaterThan(10)
      }),
      runs,
    )
  })

  test('something gives way at the middle just when a verdict says so', () => {
    fc.assert(
      fc.property(anyLoads, (loads) => {
        const parts = utilisations(loads)
        const of = shares(loads)
        const said = verdictsOn(loads, parts)
        const has = (verdict: string) => said.find((v) => v.verdict === verdict)
        expect(has('would break the bolt') !== undefined).toBe(of['bolt to break']!.middle >= 1)
        expect(has('would strip the case') !== undefined).toBe(of['thread of the hole']!.middle >= 1)
        expect(has('would break the bolt')?.where === 'over the whole range').toBe(of['bolt to break']!.lo >= 1)
        expect(has('would strip the case')?.where === 'over the whole range').toBe(of['thread of the hole']!.lo >= 1)
      }),
      runs,
    )
  })

  test('never get better with more torque once the band is passed', () => {
    const worst = (loads: JointLoads) =>
      Math.min(...verdictsOn(loads, utilisations(loads)).map(({ verdict }) => ORDER.indexOf(verdict)))
    fc.assert(
      fc.property(anyLoads, more, (loads, factor) => {
        const [first] = verdictsOn(loads, utilisations(loads))
        if (!first || ['low', 'in the usual band', 'not for this size'].includes(first.verdict)) return
        const raised = { ...loads, torque: { lo: loads.torque.lo * factor, hi: loads.torque.hi * factor } }
        expect(worst(raised)).toBeLessThanOrEqual(worst(loads))
      }),
      runs,
    )
  })
})

test('mm or inch changes nothing: a torque in either unit, a thread by either name', () => {
  const answer = (text: string, name: string) => {
    const read = readTorque(text)
    const t = readThread(name)
    if (!read.ok || !t.ok) throw new Error('not read')
    return joint({
      thread: t.value,
      strength: boltClass('8.8', t.value)!,
      ring: bearingRing(t.value)!,
      friction: frictionOf('unknown'),
      torque: intervalOf(read.value, 'torque'),
    })
  }
  expect(answer('20 lbf·ft', 'M8').clamp.lo).toBeCloseTo(answer('27.116358966628 N·m', 'M8x1.25').clamp.lo, 6)
  expect(answer('240 lbf·in', 'M8').clamp.hi).toBeCloseTo(answer('20 ft-lb', 'M8').clamp.hi, 6)
  expect(answer('20 lbf·ft', '5/16-18').verdicts).toEqual(answer('20 lbf·ft', '.3125-18 UNC').verdicts)
})

describe('stripping', () => {
  test('the tightest threads always hold more than the loosest', () => {
    fc.assert(
      fc.property(anyThread, (t) => {
        expect(bestShearAreas(t).hole).toBeGreaterThan(worstShearAreas(t).hole)
        expect(bestShearAreas(t).bolt).toBeGreaterThan(worstShearAreas(t).bolt)
        expect(worstShearAreas(t).hole).toBeGreaterThan(worstShearAreas(t).bolt)
      }),
      runs,
    )
  })
})

describe('engagementRange', () => {
  test('is in order, at least a pitch, and rises with torque at its lower end only', () => {
    fc.assert(
      fc.property(
        anyThread,
        fc.constantFrom(...MATERIAL_NAMES, undefined),
        anyTorque,
        more,
        (t, material, m, factor) => {
          const range = engagementRange([t], material, { lo: m, hi: m })
          expect(range.lo).toBeGreaterThanOrEqual(t.pitch)
          expect(range.hi).toBeGreaterThanOrEqual(range.lo)
          const raised = engagementRange([t], material, { lo: m * factor, hi: m * factor })
          expect(raised.lo).toBeGreaterThanOrEqual(range.lo)
          expect(engagementRange([t], material, undefined).lo).toBe(t.pitch)
        },
      ),
      runs,
    )
  })

  test('its lower end is below what any stated friction, head or material asks', () => {
    fc.assert(
      fc.property(anyLoads, (loads) => {
        const { lo } = engagementRange([loads.thread], loads.parent!.name, loads.torque)
        const { needed } = joint(loads).engagement!
        expect(lo).toBeLessThanOrEqual(Math.max(loads.thread.pitch, needed.lo))
      }),
      runs,
    )
  })
})
