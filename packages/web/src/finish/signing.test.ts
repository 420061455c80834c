import {
  type Event,
  faceClosed,
  faceDescribed,
  fold,
  foldMore,
  type Happening,
  partCameOut,
  partWentIn,
  recordHash,
  sha256OfText,
  stepSigned,
} from '@gripbook/record'
import { expect, test } from 'vitest'
import { told, UNIT } from '../bench/testing/told.ts'
import { releaseOf } from './release.ts'
import {
  isOnlyPerson,
  mayCheck,
  mayRelease,
  type Person,
  roleOf,
  signaturesOf,
  UNKNOWN,
  WHOLE_UNIT,
} from './signing.ts'

const THERE = '0193a000-0000-4000-8000-0000000000d2'
const ben: Person = { who: 'ben', device: THERE, role: 'checker', people: 2 }
const ada: Person = { ...ben, who: 'ada' }

const built: Happening[] = [
  faceDescribed({ face: 'pan' }),
  partCameOut({ part: 'seal-1', what: 'seal' }),
  partWentIn({ part: 'seal-1' }),
  faceClosed({ face: 'pan' }),
]
const of = (events: readonly Event[]) => fold(UNIT, events)
const signed = (who: string, before: readonly Event[]) =>
  told([stepSigned({ step: WHOLE_UNIT, as: 'checker' })], { before, who, device: THERE }).events

test('whoever built it does not check it; a second person does, if the shop lets him', () => {
  const folded = of(told(built).events)
  expect(mayCheck(folded, ada)).toBe('worked-here')
  expect(mayCheck(folded, ben)).toBe('yes')
  expect(mayCheck(folded, { ...ben, role: 'builder' })).toBe('role')
  expect(mayCheck(folded, { ...ben, role: null })).toBe('yes')
  expect(mayRelease(ben)).toBe(true)
  expect(mayRelease({ ...ben, role: 'builder' })).toBe(false)
  expect(mayRelease({ ...ben, role: null })).toBe(true)
})

test('the shop is one person by its list, and without a shop by who wrote here', () => {
  const one = told(built).events
  expect(isOnlyPerson(of(one), { ...ada, role: null, people: null })).toBe(true)
  expect(isOnlyPerson(of(signed('ben', one)), { ...ada, role: null, people: null })).toBe(false)
  expect(isOnlyPerson(of(one), { ...ada, people: 1 })).toBe(true)
  expect(isOnlyPerson(of(one), { ...ada, people: 2 })).toBe(false)
  expect(isOnlyPerson(of(one), { ...ada, people: null })).toBe(false)
})

test('signatures are told with who and as what', () => {
  expect(signaturesOf(of(signed('ben', told(built).events)))).toMatchObject([{ as: 'checker', who: 'ben', face: null }])
})

test('a release is refused while anything is open, and names the record when nothing is', () => {
  const events = told(built).events
  const unsigned = releaseOf(of(events), false)
  expect(unsigned).toMatchObject({ ok: false, stops: [{ gate: 'release', why: { code: 'not-checked' } }] })
  expect(releaseOf(of(events.slice(0, 2)), true)).toMatchObject({ ok: false })

  const checked = signed('ben', events)
  const release = releaseOf(of(checked), false)
  if (!release.ok) throw new Error('it should be free')
  expect(release.happening.body).toEqual({
    heads: of(checked).heads,
    record: recordHash(checked, sha256OfText),
  })
  const after = told([release.happening], { before: checked }).events
  expect(foldMore(of(checked), after.slice(-1)).work.released?.value.record).toBe(recordHash(checked, sha256OfText))

  expect(releaseOf(of(events), true)).toMatchObject({ ok: true, happening: { body: { onlyPerson: true } } })
})

test('a signature that did not know of the last work is none', () => {
  const events = signed('ben', told(built).events)
  const later = told([partWentIn({ part: 'seal-1' })], { before: events }).events
  expect(releaseOf(of(later), false)).toMatchObject({ ok: false, stops: [{ why: { code: 'signed-before' } }] })
})

test('a device that belongs to a shop and has not heard from it knows of nobody’s role', () => {
  const away = { signedIn: 'unknown', person: null } as const
  expect(roleOf(false, away, true)).toBe(UNKNOWN)
  expect(roleOf(false, null, true)).toBe(UNKNOWN)
  expect(roleOf(false, away, false)).toBeNull()
  expect(roleOf(false, { signedIn: 'no', person: null }, true)).toBeNull()
  expect(roleOf(true, null, true)).toBeNull()
  expect(roleOf(false, { signedIn: 'yes', person: { role: 'owner' } }, true)).toBe('owner')
  const folded = of(told(built).events)
  const nobody: Person = { ...ada, role: UNKNOWN, people: 1 }
  expect([isOnlyPerson(folded, nobody), mayCheck(folded, nobody), mayRelease(nobody)]).toEqual([false, 'role', false])
})
