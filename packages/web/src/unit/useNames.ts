import { useApp } from '../app/context.ts'
import { words } from '../words/index.ts'
import { usePeople } from './usePeople.ts'

/** Who is meant by an id in an entry: "You" for whoever works here, the name that the shop knows, or someone elsewhere. */
export function useNames(): (who: string) => string {
  const { book, settings } = useApp()
  const { names } = usePeople()
  return (who) => {
    if (who === book.who || who === settings.own?.id) return words.story.you
    return Object.hasOwn(names, who) ? names[who]! : words.story.elsewhere
  }
}
