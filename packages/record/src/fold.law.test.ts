import { expect, test } from 'vitest'
import { canonical } from './canonical.ts'
import { chainFaults } from './chain.ts'
import { clashOf, type Entry, held, knew } from './clash.ts'
import { readBody } from './events/catalogue.ts'
import type { Event } from './events/event.ts'
import type { Json } from './events/json.ts'
import { keyOf, type Place, STEP } from './events/places.ts'
import { fold, foldMore } from './fold.ts'
import { sha256OfText } from './sha256.ts'
import { history, shuffled, UNIT } from './testing/bench.ts'
import { unitFileOf } from './toUnitFile.ts'
import type { Clash, FoldedUnit } from './unit.ts'
import { readUnitFile } from './unitFile/read.ts'
import { seeded } from './unitFile/testing/random.ts'
import { writeUnitFile } from './unitFile/write.ts'

const text = (folded: FoldedUnit): string => canonical(folded as unknown as Json)
const count = { clashes: 0, undone: 0, settled: 0, clocks: 0, files: 0, leftOut: 0, backedOutClashes: 0 }

test('[RE2] 1,000 histories over three devices with delays, repeats, losses and reorderings end in the same state everywhere', () => {
  for (let seed = 0; seed < 1_000; seed++) {
    const { devices, made } = history(seed, 12 + (seed % 29))
    const expected = text(fold(UNIT, made))
    for (const device of devices) expect(text(fold(UNIT, device.inbox)), `seed ${seed}`).toBe(expected)
    const random = seeded(seed + 0.5)
    let growing = fold(UNIT, [])
    for (let left = shuffled(random, made); left.length > 0; ) {
      const some = left.splice(0, 1 + Math.floor(random() * left.length))
      growing = foldMore(growing, random() < 0.3 ? [...some, ...some.slice(0, 2)] : some)
    }
    expect(text(growing), `seed ${seed}, a few at a time`).toBe(expected)
    const folded = fold(UNIT, made)
    count.clashes += folded.clashes.length
    count.backedOutClashes += folded.clashes.filter((clash) => clash.entries.some(({ value }) => value === null)).length
    count.undone += folded.undone.length
    count.clocks += folded.clocks.length
    count.settled += made.filter((event) => event.type === 'clash-settled').length
    expect(folded.entries.length, `seed ${seed}: nothing is lost`).toBe(made.length)
    expect(folded.missing).toEqual([])
    expect(folded.notUnderstood).toEqual([])
  }
})

test('the chains of every device of a history are whole', () => {
  for (let seed = 0; seed < 60; seed++) expect(chainFaults(history(seed, 25).made, sha256OfText)).toEqual([])
})

test('no entry stands before one that its device had, and any two stand in the same order whatever else is there', () => {
  for (let seed = 1_000; seed < 1_060; seed++) {
    const { made } = history(seed, 30)
    const { entries } = fold(UNIT, made)
    entries.forEach((later, i) => {
      for (const earlier of entries.slice(i + 1)) expect(knew(later, earlier), `seed ${seed}`).toBe(false)
    })
    const some = made.filter((_, i) => (i + seed) % 3 === 0)
    const left = new Set(some.map(({ id }) => id))
    expect(fold(UNIT, some).entries).toEqual(entries.filter(({ id }) => left.has(id)))
  }
})

test('the clashes are those that the definition gives, compared pair by pair', () => {
  for (let seed = 2_000; seed < 2_300; seed++) {
    const folded = fold(UNIT, history(seed, 40).made)
    const shown = folded.clashes.map((clash) => canonical(clash as unknown as Json)).sort()
    expect(shown, `seed ${seed}`).toEqual(
      clashesByPairs(folded)
        .map((clash) => canonical(clash as unknown as Json))
        .sort(),
    )
  }
})

test('no entry that another entry of the field knew stands against it', () => {
  for (let seed = 3_000; seed < 3_100; seed++) {
    const { made } = history(seed, 40)
    const byId = new Map(made.map((event) => [event.id, event]))
    for (const { entries } of fold(UNIT, made).clashes) {
      expect(entries.length).toBeGreaterThan(1)
      for (const a of entries) {
        for (const b of entries) expect(knew(byId.get(a.event)!, byId.get(b.event)!)).toBe(false)
      }
    }
  }
})

test('whatever a history leads to, its unit file reads', () => {
  for (let seed = 4_000; seed < 4_400; seed++) {
    const { unit, leftOut } = unitFileOf(fold(UNIT, history(seed, 40).made))
    count.leftOut += leftOut.length
    if (unit === null) continue
    count.files++
    expect(readUnitFile(writeUnitFile(unit)), `seed ${seed}`).toEqual({ ok: true, value: unit })
  }
})

test('the histories held clashes, undoings, settlings, wrong clocks and files', () => {
  for (const [what, found] of Object.entries(count)) expect(found, what).toBeGreaterThan(50)
})

/**
 * Clashes by the plain definition: for every field of a place that is there, the writes that no other write of the field (nor, for a stage of
 * tightening, a backing out) knew; a clash when these differ. Takes nothing from the fold but which entries stand. Settlings write what they name.
 */
function clashesByPairs(folded: FoldedUnit): Clash[] {
  const undone = new Set(folded.undone.map(({ event }) => event))
  const fields = new Map<string, { place: Place; field: string; entries: Entry[] }>()
  const put = (place: Place, field: string, event: Event, value: Json) => {
    const key = canonical([...place, field])
    const here = fields.get(key) ?? { place, field, entries: [] }
    fields.set(key, here)
    const own = here.entries.find((entry) => entry.event === event)
    if (own === undefined) here.entries.push({ event, value })
    else if (field !== 'there') own.value = value
  }
  const of = (place: Place, field: string): Entry[] => fields.get(canonical([...place, field]))?.entries ?? []
  const all = (place: Place, field: string): Entry[] =>
    field.startsWith(STEP) ? [...of(place, field), ...of(place, 'backed out')] : of(place, field)
  const left = (place: Place, field: string): Entry[] => {
    const entries = all(place, field)
    return entries.filter(({ event }) => !entries.some((other) => knew(other.event, event)))
  }
  for (const event of folded.entries) {
    const read = readBody(event)
    if (!read.ok || undone.has(event.id)) continue
    const writes = read.definition.writes(read.body)
    if (event.type === 'clash-settled') {
      const { at, field, stands } = event.body as { at: string[]; field: string; stands: string | null }
      const known = [...fields.values()].some(({ place }) => keyOf(place.slice(0, at.length)) === keyOf(at))
      const named = all(at, field).find((entry) => entry.event.id === stands && knew(event, entry.event))
      const value = stands === null ? null : named?.value
      if (!known || value === undefined) continue
      writes.push(field === 'there' ? { at, there: value !== false } : { at, field, value })
    }
    for (const write of writes) if ('there' in write) put(write.at, 'there', event, write.there)
    for (const write of writes) {
      for (let depth = 2; depth <= write.at.length; depth += 2) put(write.at.slice(0, depth), 'there', event, true)
      if ('backsOut' in write) put(write.at, 'backed out', event, null)
      else if ('field' in write) put(write.at, write.field, event, write.value)
    }
  }
  const isGone = (place: Place): boolean => {
    for (let depth = 2; depth <= place.length; depth += 2) {
      const there = left(place.slice(0, depth), 'there')
      if (there.length > 0 && there.every(({ value }) => value === false)) return true
    }
    return false
  }
  return [...fields.values()].flatMap(({ place, field }) => {
    if (field === 'backed out' || isGone(place)) return []
    const entries = left(place, field).sort((a, b) => folded.entries.indexOf(a.event) - folded.entries.indexOf(b.event))
    return held(entries).is === 'clash' ? [clashOf(place, field, entries)] : []
  })
}
