import { expect, test } from 'vitest'
import { draftOf, NO_WRENCH, readWrench, type WrenchDraft } from './wrenchForm.ts'

const draft: WrenchDraft = {
  name: ' Small ',
  number: 'W-1',
  tells: 'clicks',
  from: '5',
  to: '25',
  deviation: '4',
  until: '2026-09-30',
}
const read = (change: Partial<WrenchDraft>, taken: Parameters<typeof readWrench>[1] = [], size = 1) =>
  readWrench({ ...draft, ...change }, taken, size)

test('a wrench with all that its label says', () => {
  expect(read({})).toEqual({
    ok: true,
    wrench: {
      name: 'Small',
      number: 'W-1',
      tells: 'clicks',
      range: [5, 25],
      deviation: 0.04,
      calibratedUntil: '2026-09-30',
    },
  })
})

test('a name and how it tells are enough', () => {
  expect(read({ number: '', from: '', to: '', deviation: '', until: '' })).toEqual({
    ok: true,
    wrench: { name: 'Small', tells: 'clicks' },
  })
})

test('the range is kept in newton metres, whatever the page’s unit', () => {
  expect(read({ from: '10', to: '20' }, [], 0.5)).toMatchObject({ wrench: { range: [5, 10] } })
})

test.each([
  [{ name: ' ' }, { name: 'wrenchNameNeeded' }],
  [{ name: 'ratchet wrench' }, { name: 'wrenchNameTaken' }],
  [{ from: '25', to: '5' }, { range: true }],
  [{ to: '' }, { range: true }],
  [{ from: 'x' }, { range: true }],
  [{ deviation: '0' }, { deviation: true }],
  [{ deviation: 'four' }, { deviation: true }],
] as const)('%j is a fault', (change, faults) => {
  expect(read(change)).toEqual({ ok: false, faults })
})

test('two wrenches of one name could not be told apart on the record', () => {
  expect(read({}, [{ name: 'SMALL', tells: 'shows' }])).toMatchObject({ ok: false })
})

test('a wrench that the record names is typed as its label says', () => {
  const { tells: _, ...label } = { ...draft, name: 'Small', tells: 'shows' }
  const known = { name: 'Small', number: 'W-1', deviation: 0.04, calibratedUntil: '2026-09-30' }
  expect(draftOf({ ...known, range: [5, 25] }, 1)).toEqual({ ...label, tells: 'clicks' })
  expect(draftOf({ name: 'Small', range: [6.7791, 33.895] }, 1.3558179)).toMatchObject({ from: '5', to: '25' })
  expect(draftOf({ name: 'Small' }, 1)).toEqual({ ...NO_WRENCH, name: 'Small' })
})

test('what does not print stays out of the names that the record gets', () => {
  const made = read({ name: 'Long\u0007 one\n', number: 'W\u0000 2' })
  expect(made.ok && [made.wrench.name, made.wrench.number]).toEqual(['Long one', 'W 2'])
})
