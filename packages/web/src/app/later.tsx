/** A part of the page that is fetched when it is first wanted, so that the way to a verdict is short. */
import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { words } from '../words/index.ts'

/** A component that stands for the one that `load` brings; one that could not be fetched is told, and tried again on request. */
export function later<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  let here: ComponentType<P> | null = null
  return function Later(props: P) {
    const [Part, setPart] = useState<ComponentType<P> | null>(() => here)
    const [failed, setFailed] = useState(false)
    useEffect(() => {
      if (Part !== null || failed) return
      let left = false
      load().then(
        (loaded) => {
          here = loaded
          if (!left) setPart(() => loaded)
        },
        () => left || setFailed(true),
      )
      return () => {
        left = true
      }
    }, [Part, failed])
    if (Part !== null) return <Part {...props} />
    if (!failed) return <p class="starting">{words.shell.opening}</p>
    return (
      <p class="starting">
        {words.shell.partAway}{' '}
        <button type="button" class="button" onClick={() => setFailed(false)}>
          {words.shell.tryAgain}
        </button>
      </p>
    )
  }
}
