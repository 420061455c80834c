/** A bank card laid on the screen, and an outline that is made as wide: so the page learns how large a pixel is. */
import { useEffect, useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { words } from '../words/index.ts'
import { CARD, firstWidth, type Laying, layingFor, scaleOf } from './card.ts'
import './CardSheet.css'

type Props = { onClose: () => void; onKept: (pixelsPerMillimetre: number) => void }

export function CardSheet({ onClose, onKept }: Props) {
  const { settings } = useApp()
  const stage = useRef<HTMLDivElement>(null)
  const [laying, setLaying] = useState<Laying | null>(null)
  const [width, setWidth] = useState(0)

  useEffect(() => {
    // Nothing has a width until the sheet is shown; a device that is turned has another, and the card lies on it another way.
    const watching = new ResizeObserver(([entry]) => {
      const next = layingFor(Math.floor(entry!.contentRect.width))
      setLaying((before) => {
        if (before?.most === next.most && before.across === next.across) return before
        setWidth(firstWidth(next, settings.pixelsPerMillimetre))
        return next
      })
    })
    watching.observe(stage.current!)
    return () => watching.disconnect()
  }, [settings.pixelsPerMillimetre])

  const step = (by: number) => laying && setWidth((now) => Math.min(Math.max(now + by, laying.least), laying.most))

  return (
    <Sheet title={words.settings.cardTitle} onClose={onClose} wide>
      <p>{laying?.side === 'short' ? words.settings.cardShort : words.settings.cardLong}</p>
      <div ref={stage} class="card-stage">
        {laying !== null && (
          <div
            class="card-outline"
            style={{
              '--card-width': `${width}px`,
              '--card-height': `${Math.round((width / laying.across) * (CARD.long + CARD.short - laying.across))}px`,
              '--card-corner': `${((width / laying.across) * CARD.corner).toFixed(1)}px`,
            }}
          />
        )}
      </div>
      {laying !== null && (
        <div class="card-steps">
          <button type="button" class="button" aria-label={words.settings.narrower} onClick={() => step(-1)}>
            <Icon name="minus" />
          </button>
          <input
            type="range"
            min={laying.least}
            max={laying.most}
            step={1}
            value={width}
            aria-label={words.settings.outlineWidth}
            aria-valuetext={words.settings.outlineSays(laying.across.toFixed(2), width)}
            onInput={(event) => setWidth(event.currentTarget.valueAsNumber)}
          />
          <button type="button" class="button" aria-label={words.settings.wider} onClick={() => step(1)}>
            <Icon name="plus" />
          </button>
        </div>
      )}
      <button
        type="button"
        class="button button--act button--wide"
        disabled={laying === null}
        onClick={() => laying && onKept(scaleOf(width, laying))}
      >
        {words.settings.cardFits}
      </button>
      <p class="quiet">{words.settings.cardSize}</p>
    </Sheet>
  )
}
