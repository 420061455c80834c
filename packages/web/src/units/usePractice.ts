import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { openPractice, startPracticeAfresh } from '../device/practice.ts'
import { words } from '../words/index.ts'

/** Opens the practice unit, or a new one; while it is laid out `busy`. */
export function usePractice(): { busy: boolean; open: (afresh?: boolean) => Promise<boolean> } {
  const { go, say } = useApp()
  const [busy, setBusy] = useState(false)
  return {
    busy,
    async open(afresh = false) {
      setBusy(true)
      try {
        const unit = await (afresh ? startPracticeAfresh() : openPractice())
        go({ at: 'unit', book: 'practice', unit })
        return true
      } catch (error) {
        const why = error instanceof Error ? error.message : String(error)
        say({ words: words.units.practiceFailed(why), tone: 'fault' })
        return false
      } finally {
        setBusy(false)
      }
    },
  }
}
