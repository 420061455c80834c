/** The scale of the photograph, from two points and the distance between them. */
import { type Face, intervalOf } from '@gripbook/engine'
import { type FaceWork, facePhotographed, holeMoved } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { QuantityField, typedLength } from '../parts/Field.tsx'
import { words } from '../words/index.ts'
import { millimetresAt } from './marks.ts'
import { scaleOf } from './scale.ts'
import type { PicturePoint } from './stage/view.ts'

type Props = {
  unit: string
  face: Face
  work: FaceWork | undefined
  points: readonly PicturePoint[]
  onAgain: () => void
  onDone: () => void
}

export function ScalePanel({ unit, face, work, points, onAgain, onDone }: Props) {
  const { settings, write } = useApp()
  const [text, setText] = useState('')
  const typed = typedLength(text, settings.length)
  const photograph = work?.photograph?.value
  const distance = typed.state === 'read' ? middle(intervalOf(typed.value)) : null
  const scale = photograph === undefined || distance === null ? null : scaleOf(points, photograph, distance)

  async function keep() {
    if (scale === null || photograph === undefined) return
    const { pixelsPerMillimetre: _, ...picture } = photograph
    const done = await write(
      unit,
      [
        facePhotographed({ face: face.id, ...picture, pixelsPerMillimetre: scale }),
        ...face.holes.flatMap(({ id }) => {
          const mark = work?.holes[id]?.mark?.value
          return mark ? [holeMoved({ face: face.id, hole: id, at: millimetresAt(mark, photograph.height, scale) })] : []
        }),
      ],
      words.face.scaleSet(scale.toFixed(2)),
    )
    if (done !== null) onDone()
  }

  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault()
        void keep()
      }}
    >
      <div>
        <h2>{words.face.scaleTitle}</h2>
        <p class="quiet">{words.face.scaleHow}</p>
      </div>
      <p role="status">
        {points.length === 0 ? words.face.scaleFirst : points.length === 1 ? words.face.scaleSecond : ''}
      </p>
      {points.length === 2 && (
        <>
          <QuantityField
            label={words.face.scaleDistance}
            unit={settings.length}
            value={text}
            typed={typed}
            onInput={setText}
          />
          {distance !== null && scale === null && <p class="field__fault">{words.face.scaleSame}</p>}
        </>
      )}
      <div class="buttons buttons--even">
        <button type="button" class="button" onClick={onDone}>
          {words.shell.cancel}
        </button>
        <button type="button" class="button" disabled={points.length === 0} onClick={onAgain}>
          {words.face.scaleAgain}
        </button>
        <button type="submit" class="button button--act" disabled={scale === null}>
          {words.shell.keep}
        </button>
      </div>
    </form>
  )
}

function middle({ lo, hi }: { lo: number; hi: number }): number | null {
  return Number.isFinite(hi) && hi > 0 ? (lo + hi) / 2 : null
}
