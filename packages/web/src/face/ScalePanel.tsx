/** The scale of the photograph, from two points and the distance between them. */
import { type Face, intervalOf } from '@gripbook/engine'
import { type FaceWork, facePhotographed, holeMoved } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { QuantityField, typedLength } from '../parts/Field.tsx'
import { words } from '../words/index.ts'
import { millimetresAt, pictureOf } from './marks.ts'
import { scaleOf } from './scale.ts'
import type { PicturePoint } from './stage/view.ts'

type Props = {
  unit: string
  face: Face
  work: FaceWork | undefined
  points: readonly PicturePoint[]
  onAgain: () => void
  onDone: () => void
  /** Unless the same as done. */
  onCancel?: () => void
}

export function ScalePanel({ unit, face, work, points, onAgain, onDone, onCancel = onDone }: Props) {
  const { settings, write } = useApp()
  const [text, setText] = useState('')
  const typed = typedLength(text, settings.length)
  const picture = pictureOf(work)
  const distance = typed.state === 'read' ? middle(intervalOf(typed.value)) : null
  const scale = distance === null ? null : scaleOf(points, picture, distance)

  async function keep() {
    if (scale === null) return
    const photograph = work?.photograph?.value
    const done = await write(
      unit,
      [
        // The blank sheet keeps no scale of its own: the places of the holes on it say it.
        ...(photograph === undefined
          ? []
          : [facePhotographed({ face: face.id, ...photograph, pixelsPerMillimetre: scale })]),
        ...face.holes.flatMap(({ id }) => {
          const mark = work?.holes[id]?.mark?.value
          return mark ? [holeMoved({ face: face.id, hole: id, at: millimetresAt(mark, picture.height, scale) })] : []
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
        <button type="button" class="button" onClick={onCancel}>
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
