import { cameBack, fold, knowledgeOf, nextEntry, sha256OfText, unitReleased, unitTakenIn } from '@gripbook/record'
import { expect, test } from 'vitest'
import { told } from '../bench/testing/told.ts'
import { found, lineOf, type ShopUnit, unitLines } from './unitLines.ts'

const uuid = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`

function here(n: number, at: string, body: Parameters<typeof unitTakenIn>[0]) {
  const given = { id: uuid(n + 500), at, who: 'x', ...unitTakenIn(body) }
  return lineOf(fold(uuid(n), [nextEntry(knowledgeOf(uuid(n), uuid(900), []), given, sha256OfText)]))
}

const loader = here(1, '2026-03-01T09:00:00.000Z', { name: 'Yard loader', job: 'A-77', complaint: 'Slips in second' })
const crane = here(2, '2026-03-03T09:00:00.000Z', { name: 'Crane' })
const pump: ShopUnit = {
  unit: uuid(3),
  name: 'Pump',
  model: 'P 4',
  complaint: null,
  released: true,
  lastAt: '2026-03-02T09:00:00.000Z',
}

test('the one worked on last stands first, wherever it is', () => {
  expect(unitLines([loader, crane], new Set(), [pump]).map(({ name }) => name)).toEqual([
    'Crane',
    'Pump',
    'Yard loader',
  ])
})

test('a unit that is on the device and in the shop stands once, as the device has it', () => {
  const lines = unitLines([loader], new Set([loader.unit]), [{ ...pump, unit: loader.unit }])
  expect(lines).toHaveLength(1)
  expect(lines[0]).toMatchObject({ name: 'Yard loader', where: 'here', waits: true, faces: 0 })
})

test('a unit is found by name, model, job and complaint', () => {
  const lines = unitLines([loader, crane], new Set(), [pump])
  expect(found(lines, 'a-77').map(({ name }) => name)).toEqual(['Yard loader'])
  expect(found(lines, 'SECOND').map(({ name }) => name)).toEqual(['Yard loader'])
  expect(found(lines, 'p 4').map(({ name }) => name)).toEqual(['Pump'])
  expect(found(lines, 'nowhere')).toEqual([])
})

test('a unit that came back says so with what the customer says now, until it is released again', () => {
  const release = unitReleased({ heads: {}, record: 'c'.repeat(64), onlyPerson: true })
  const taken = unitTakenIn({ name: 'Winch', complaint: 'Slips' })
  const line = (...more: Parameters<typeof told>[0]) => {
    const { id, events } = told([taken, release, ...more])
    return lineOf(fold(id, events))
  }
  expect(line()).toMatchObject({ released: true, back: false, complaint: 'Slips' })
  const back = cameBack({ complaint: 'Weeps', toAnswer: true })
  expect(line(back)).toMatchObject({ released: false, back: true, complaint: 'Weeps' })
  expect(line(back, release)).toMatchObject({ released: true, back: false, complaint: 'Slips' })
})
