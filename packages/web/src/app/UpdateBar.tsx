import { useEffect, useState } from 'preact/hooks'
import { lookForUpdate } from '../device/serviceWorker.ts'
import { words } from '../words/index.ts'

/** A newer Gripbook is here: it is taken when the person says so, never in the middle of work. What was entered is on the disk either way. */
export function UpdateBar() {
  const [take, setTake] = useState<(() => void) | null>(null)
  useEffect(() => lookForUpdate((ready) => setTake(() => ready)), [])
  if (take === null) return null
  return (
    <aside class="update" aria-label={words.shell.update}>
      <p>{words.shell.updateReady}</p>
      <button type="button" class="button" onClick={() => setTake(null)}>
        {words.shell.later}
      </button>
      <button type="button" class="button button--act" onClick={take}>
        {words.shell.updateNow}
      </button>
    </aside>
  )
}
