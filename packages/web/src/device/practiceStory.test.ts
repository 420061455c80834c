import { readFileSync } from 'node:fs'
import { fold, knowledgeOf, learn, nextEntry, readBody, readUnitFile, sha256OfText } from '@gripbook/record'
import { expect, test } from 'vitest'
import { filesOf, type PracticeFile, practiceHappenings } from './practiceStory.ts'

const at = (name: string) => new URL(`../../../../demo/${name}`, import.meta.url)
const read = readUnitFile(readFileSync(at('yard-loader.json'), 'utf8'))
if (!read.ok) throw new Error('the demo cannot be read')
const unit = read.value
const practice = JSON.parse(readFileSync(at('practice.json'), 'utf8')) as PracticeFile
const kept = new Map(filesOf(practice).map((file) => [file, sha256OfText(file)]))
const UNIT = '00000000-0000-4000-8000-000000000001'

function folded(happenings: ReturnType<typeof practiceHappenings>) {
  let known = knowledgeOf(UNIT, '00000000-0000-4000-8000-000000000002', [])
  const events = happenings.map((happening, index) => {
    const id = `00000000-0000-4000-8000-${String(index + 100).padStart(12, '0')}`
    const event = nextEntry(known, { id, at: '2026-03-01T09:30:00.000Z', who: 'x', ...happening }, sha256OfText)
    known = learn(known, event)
    return event
  })
  return fold(UNIT, events)
}

test('every entry of the practice unit is one that the record takes', () => {
  for (const happening of practiceHappenings(unit, practice, kept)) expect(readBody(happening).ok).toBe(true)
})

test('the practice unit stands with its faces on their pictures, every hole marked, and its parts', () => {
  const stands = folded(practiceHappenings(unit, practice, kept))
  expect(stands.unit.faces).toHaveLength(unit.faces.length)
  for (const face of unit.faces) {
    const work = stands.faces[face.id]!
    expect(work.photograph?.value.photograph).toBe(kept.get(practice.pictures[face.id]!.file))
    for (const { id } of face.holes) expect(work.holes[id]?.mark?.value).toEqual(practice.pictures[face.id]!.marks[id])
  }
  expect(Object.keys(stands.things.part)).toEqual(practice.parts.map(({ part }) => part))
  expect(stands.work.complaint?.value).toBe(practice.complaint)
  expect(stands.clashes).toEqual([])
})

test('one face of the practice unit has a cover, a joint and an order of its manual', () => {
  const face = folded(practiceHappenings(unit, practice, kept)).unit.faces.find(({ id }) => id === 'pump-cover')!
  expect(face.cover?.thickness).toBe(10)
  expect(face.bed?.hollows).toHaveLength(1)
  const holes = face.holes.map(({ id }) => id).sort()
  for (const { sequence } of face.order!) expect([...sequence].sort()).toEqual(holes)
})

test('marks lie within their pictures', () => {
  for (const { width, height, marks } of Object.values(practice.pictures))
    for (const [x, y] of Object.values(marks)) {
      expect(x).toBeGreaterThan(0)
      expect(x).toBeLessThan(width)
      expect(y).toBeGreaterThan(0)
      expect(y).toBeLessThan(height)
    }
})

test('a picture that was not kept leaves its face without one, and nothing else is lost', () => {
  const stands = folded(practiceHappenings(unit, practice, new Map()))
  expect(stands.faces['control-block']!.photograph).toBeUndefined()
  expect(stands.unit.faces.flatMap(({ holes }) => holes)).toHaveLength(38)
})
