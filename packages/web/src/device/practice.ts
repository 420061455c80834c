/** The practice unit: made from the demo's files in a record of its own, which is never sent. */
import { readUnitFile } from '@gripbook/record'
import { openBook } from './books.ts'
import { newId } from './newId.ts'
import { filesOf, type PracticeFile, practiceHappenings } from './practiceStory.ts'
import { readSettings } from './settings.ts'

/** The build puts them beside the page (`vite.config.ts`). */
const UNIT_FILE = '/demo/yard-loader.json'
const PRACTICE_FILE = '/demo/practice.json'

/** Outside of the record: which of the practice units on this device is worked on. */
const PLACE = 'gripbook practice unit'

let making: Promise<string> | null = null

/** The unit to practise on: the one that is on the device, else a new one. Errors: those of the device, and an Error when its files can be fetched from nowhere. */
export function openPractice(): Promise<string> {
  making ??= knownOrNew().finally(() => {
    making = null
  })
  return making
}

/** A new practice unit, as if nothing had been done; the one before stays in its record. */
export async function startPracticeAfresh(): Promise<string> {
  const device = await openBook('practice')
  const [unitText, practice] = await Promise.all([
    fetched(UNIT_FILE).then((answer) => answer.text()),
    fetched(PRACTICE_FILE).then((answer) => answer.json() as Promise<PracticeFile>),
  ])
  const read = readUnitFile(unitText)
  if (!read.ok) throw new Error('the file of the practice unit is damaged')
  const kept = new Map<string, string>()
  for (const file of filesOf(practice)) {
    const bytes = await (await fetched(`/demo/${file}`)).blob()
    kept.set(file, (await device.photograph(bytes)).photograph)
  }
  const unit = newId()
  await device.appendAll(unit, readSettings().own?.id ?? 'practice', practiceHappenings(read.value, practice, kept))
  note(unit)
  return unit
}

async function knownOrNew(): Promise<string> {
  const device = await openBook('practice')
  const there = await device.units()
  const noted = noteOf()
  if (noted !== null && there.includes(noted)) return noted
  const last = there.at(-1)
  if (last === undefined) return startPracticeAfresh()
  note(last)
  return last
}

async function fetched(url: string): Promise<Response> {
  const answer = await fetch(url)
  if (!answer.ok) throw new Error(`${url} came back as ${answer.status}`)
  return answer
}

function noteOf(): string | null {
  try {
    return localStorage.getItem(PLACE)
  } catch {
    return null
  }
}

/** Where the browser keeps no such note, any practice unit of the device is the one. */
function note(unit: string): void {
  try {
    localStorage.setItem(PLACE, unit)
  } catch {
    // Nothing is lost.
  }
}
