import { useEffect, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { shop } from '../device/shop.ts'
import { words } from '../words/index.ts'

const PLACE = 'gripbook people'

/** Who is meant by an id in an entry: "You" for whoever works here, the name that the shop knows, or someone elsewhere. Names are kept for the time without signal. */
export function useNames(): (who: string) => string {
  const { book, settings } = useApp()
  const [people, setPeople] = useState(kept)
  const signedIn = book.status?.signedIn === 'yes'
  useEffect(() => {
    if (!signedIn) return
    let left = false
    void shop.people().then((answer) => {
      if (!answer.ok || left) return
      const names = Object.fromEntries(answer.value.map(({ id, name }) => [id, name]))
      keep(names)
      setPeople(names)
    })
    return () => {
      left = true
    }
  }, [signedIn])
  return (who) => {
    if (who === book.who || who === settings.own?.id) return words.story.you
    return Object.hasOwn(people, who) ? people[who]! : words.story.elsewhere
  }
}

function kept(): Record<string, string> {
  try {
    const names: unknown = JSON.parse(localStorage.getItem(PLACE) ?? '{}')
    if (typeof names !== 'object' || names === null) return {}
    return Object.fromEntries(Object.entries(names).filter(([, name]) => typeof name === 'string'))
  } catch {
    return {}
  }
}

function keep(names: Record<string, string>): void {
  try {
    localStorage.setItem(PLACE, JSON.stringify(names))
  } catch {
    // They are asked for again.
  }
}
