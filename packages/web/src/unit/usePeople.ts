import { useEffect, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { type ShopPerson, shop } from '../device/shop.ts'

const NAMES = 'gripbook people'
const AT_WORK = 'gripbook people at work'

export type People = {
  /** Names by ids, also of people who have left. */
  names: Readonly<Record<string, string>>
  /** How many may write; null while that is not known. */
  atWork: number | null
}

/** The people of the shop, as it says or as it said last: kept for the time without signal. */
export function usePeople(): People {
  const { book } = useApp()
  const [people, setPeople] = useState(kept)
  const signedIn = book.status?.signedIn === 'yes'
  useEffect(() => {
    if (!signedIn) return
    let left = false
    void ask().then((found) => {
      if (found !== null && !left) setPeople(found)
    })
    return () => {
      left = true
    }
  }, [signedIn])
  return people
}

let asking: Promise<People | null> | null = null

/** What asks while an answer is on its way gets the same one: a screen has many places that name people. */
function ask(): Promise<People | null> {
  asking ??= shop
    .people()
    .then((answer) => (answer.ok ? told(answer.value) : null))
    .finally(() => {
      asking = null
    })
  return asking
}

function told(list: readonly ShopPerson[]): People {
  const names = Object.fromEntries(list.map(({ id, name }) => [id, name]))
  const atWork = list.filter(({ left, role }) => left === null && role !== 'viewer').length
  try {
    localStorage.setItem(NAMES, JSON.stringify(names))
    localStorage.setItem(AT_WORK, String(atWork))
  } catch {
    // They are asked for again.
  }
  return { names, atWork }
}

function kept(): People {
  try {
    const names: unknown = JSON.parse(localStorage.getItem(NAMES) ?? '{}')
    const count = Number(localStorage.getItem(AT_WORK))
    return {
      names: typeof names === 'object' && names !== null ? onlyTexts(names) : {},
      atWork: Number.isInteger(count) && count > 0 ? count : null,
    }
  } catch {
    return { names: {}, atWork: null }
  }
}

function onlyTexts(names: object): Record<string, string> {
  return Object.fromEntries(Object.entries(names).filter(([, name]) => typeof name === 'string'))
}
