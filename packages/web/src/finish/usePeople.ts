import { useEffect, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { shop } from '../device/shop.ts'

const PLACE = 'gripbook people at work'

/** How many people of the shop may write; null while that is not known. Kept for the time without signal. */
export function usePeople(): number | null {
  const { book } = useApp()
  const [people, setPeople] = useState(kept)
  const signedIn = book.status?.signedIn === 'yes'
  useEffect(() => {
    if (!signedIn) return
    let left = false
    void shop.people().then((answer) => {
      if (!answer.ok || left) return
      const count = answer.value.filter((person) => person.left === null && person.role !== 'viewer').length
      keep(count)
      setPeople(count)
    })
    return () => {
      left = true
    }
  }, [signedIn])
  return people
}

function kept(): number | null {
  try {
    const count = Number(localStorage.getItem(PLACE))
    return Number.isInteger(count) && count > 0 ? count : null
  } catch {
    return null
  }
}

function keep(count: number): void {
  try {
    localStorage.setItem(PLACE, String(count))
  } catch {
    // It is asked for again.
  }
}
