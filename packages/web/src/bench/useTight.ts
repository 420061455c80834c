import { useEffect, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'

/** px: a screen narrower than this is a phone that stands; one lower than this has no room for twelve keys, a picture and the words. */
const NARROW = 600
const LOW = 720
/** px: lower than this is a phone that lies. */
const LYING = 520

type Size = { width: number; height: number }

/** Whether the work needs the room of the page's head, and a figure is stepped, not typed on twelve keys: on a narrow screen that is low, or whose keys are true millimetres, and on a phone that lies. */
export function isTight({ width, height }: Size, gloves: boolean): boolean {
  return height < LYING || (width < NARROW && (gloves || height < LOW))
}

/** The same, kept up with the window as it is turned. A keyboard that comes up takes height only: a field does not change under the finger for it. */
export function useTight(): boolean {
  const { settings } = useApp()
  const [size, setSize] = useState(sizeNow)
  useEffect(() => {
    const changed = () => setSize((before) => (before.width === innerWidth ? before : sizeNow()))
    addEventListener('resize', changed)
    return () => removeEventListener('resize', changed)
  }, [])
  return isTight(size, settings.gloves)
}

function sizeNow(): Size {
  return { width: innerWidth, height: innerHeight }
}
