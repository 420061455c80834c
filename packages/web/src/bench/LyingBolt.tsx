import type { Hole, Kind } from '@gripbook/engine'
import { useEffect, useId, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { drawingTheme } from '../app/look.ts'
import { Drawing } from '../parts/Drawing.tsx'
import { ASSUMED } from '../settings/card.ts'
import { words } from '../words/bench.ts'
import './LyingBolt.css'

type Drawings = Pick<typeof import('../parts/drawings.ts'), 'lyingBolt' | 'threadOf'>

type Props = { kind: Kind; hole: Hole; name: string }

/** Height that a bolt may take, px: what is thicker is drawn smaller. */
const HEIGHT = 200

/** The bolt to scale, lying: true to size where the screen's millimetre is known, so that the one in the hand can be laid on it. */
export function LyingBolt({ kind, hole, name }: Props) {
  const { settings } = useApp()
  const prefix = useId()
  const place = useRef<HTMLDivElement>(null)
  const [drawings, setDrawings] = useState<Drawings | null>(null)
  const [width, setWidth] = useState(0)
  useEffect(() => {
    let left = false
    void import('../parts/drawings.ts').then(({ lyingBolt, threadOf }) => {
      if (!left) setDrawings({ lyingBolt, threadOf })
    })
    return () => {
      left = true
    }
  }, [])
  useLayoutEffect(() => {
    const watched = new ResizeObserver(([entry]) => setWidth(Math.floor(entry!.contentRect.width)))
    watched.observe(place.current!)
    return () => watched.disconnect()
  }, [])
  const theme = drawingTheme(settings)
  const drawn =
    drawings === null || width < 60
      ? null
      : drawings.lyingBolt({
          kind,
          thread: drawings.threadOf(kind.thread, hole.thread),
          title: name,
          look: { theme, unit: settings.length },
          pixels: settings.pixelsPerMillimetre ?? ASSUMED,
          room: { width: Math.min(width, 620), height: HEIGHT },
          prefix,
        })
  return (
    <div class="lying" ref={place}>
      {drawn !== null && <Drawing svg={drawn.svg} kind="bolt" />}
      {drawn !== null && (
        <p class="quiet">
          {drawn.share === 1
            ? settings.pixelsPerMillimetre === null
              ? words.aboutSize
              : words.trueSize
            : words.smaller(Math.round(1 / drawn.share))}
        </p>
      )}
    </div>
  )
}
