import type { FaceAnswer, HoleAnswer, Kind } from '@gripbook/engine'
import { expect, test } from 'vitest'
import { shownHole } from './shown.ts'

const TRAY = new Map<string, Kind>(
  [
    { id: 'a', thread: 'M6', length: 30 },
    { id: 'b', thread: 'M6', length: 45 },
    { id: 'c', thread: 'M6', length: 45, features: ['stud end'] },
  ].map((kind) => [kind.id, kind]),
)

function answered(here: Partial<HoleAnswer>): FaceAnswer {
  const hole: HoleAnswer = { verdict: 'settled', may: ['a'], likely: {}, best: 'a', why: '', ...here }
  return {
    face: 'lid',
    feasible: true,
    holes: { '1': hole },
    pairs: [],
    conflict: null,
    changes: { count: 0, cycles: [] },
    missing: 0,
    leftOver: {},
    wanted: [],
    next: null,
    likelihood: { method: 'exact' },
  }
}

const settled = answered({})
const open = answered({ verdict: 'open', may: ['a', 'b'] })
const contradicted = answered({ verdict: 'contradicted', may: [], best: null })

test.each([
  ['settled, another came out', settled, 'b', false, 'a', 'belongs', ''],
  ['settled, asked for what came out', settled, 'b', true, 'b', 'as found', ''],
  ['open', open, 'b', false, 'b', 'as found', 'as found; open: M6×30 or M6×45'],
  ['open, nothing known to have come out', open, undefined, false, undefined, 'nothing', 'open: M6×30 or M6×45'],
  ['contradicted', contradicted, 'b', false, 'b', 'as found', 'as found; no bolt of the tray fits'],
  ['contradicted, found empty', contradicted, 'none', false, undefined, 'nothing', 'no bolt of the tray fits'],
  ['not computed', undefined, 'a', false, 'a', 'as found', ''],
  ['not computed, found empty', undefined, 'none', false, undefined, 'nothing', 'found empty'],
  ['nothing known', undefined, undefined, false, undefined, 'nothing', 'bolt not known'],
] as const)('[PR5] %s', (_, answer, asFound, showFound, kind, as, said) => {
  const hole = { id: '1', thread: 'M6', ...(asFound === undefined ? {} : { asFound }) }
  expect(shownHole(hole, TRAY, answer, showFound)).toMatchObject({ as, said })
  expect(shownHole(hole, TRAY, answer, showFound).kind?.id).toBe(kind)
})

test('a size that two kinds share is told with the name of the kind', () => {
  const name = (asFound: string) => shownHole({ id: '1', thread: 'M6', asFound }, TRAY, undefined, false).name
  expect([name('a'), name('b'), name('c')]).toEqual(['M6×30', 'M6×45 b', 'M6×45 c'])
})
