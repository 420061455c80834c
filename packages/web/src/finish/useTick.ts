import { type FoldedUnit, type Happening, stopsFor } from '@gripbook/record'
import { useApp } from '../app/context.ts'
import { words } from '../words/finish.ts'

/** Says of something that it is done; not while it would bury what is unfinished. */
export function useTick(folded: FoldedUnit): (happening: Happening, said: string) => void {
  const { write, say } = useApp()
  return (happening, said) => {
    if (stopsFor(folded, happening).length > 0) return say({ words: words.jobBuries, tone: 'fault' })
    void write(folded.id, [happening], said)
  }
}
