import { useEffect, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'

const NARROW = '(max-width: 599px)'

/** Keys of true millimetres on a small screen: there the head of the page gives its room to the work, and a figure is stepped, not typed on twelve keys. */
export function useTight(): boolean {
  const { settings } = useApp()
  const [narrow, setNarrow] = useState(() => matchMedia(NARROW).matches)
  useEffect(() => {
    const asked = matchMedia(NARROW)
    const changed = () => setNarrow(asked.matches)
    asked.addEventListener('change', changed)
    return () => asked.removeEventListener('change', changed)
  }, [])
  return settings.gloves && narrow
}
