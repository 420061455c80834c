/** No millimetres yet: two points on the picture and their distance. */
import { useMemo, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { outOf } from '../app/route.ts'
import { marksOf } from '../face/marks.ts'
import { ScalePanel } from '../face/ScalePanel.tsx'
import { Stage } from '../face/stage/Stage.tsx'
import type { PicturePoint } from '../face/stage/view.ts'
import { words } from '../words/tightening.ts'
import type { Seen } from './seen.ts'

const NO_NAMES: ReadonlyMap<string, string> = new Map()

export function NeedsScale({ folded, face, picture, url }: Seen) {
  const { route, go } = useApp()
  const work = folded.faces[face.id]
  const [points, setPoints] = useState<PicturePoint[]>([])
  const marks = useMemo(() => marksOf(face, work, null, 'belongs'), [face, work])
  return (
    <div class="face face--busy">
      <Stage
        picture={picture}
        url={url}
        marks={marks}
        names={NO_NAMES}
        mode="scale"
        selected={undefined}
        points={points}
        onOpen={() => {}}
        onAdd={() => {}}
        onMove={() => {}}
        onPoint={(point) => setPoints((before) => (before.length < 2 ? [...before, point] : before))}
      />
      <div class="face__panel">
        <div class="stack">
          <div class="empty">
            <h2>{words.needsScale}</h2>
            <p>{words.needsScaleWhat}</p>
          </div>
          <ScalePanel
            unit={folded.id}
            face={face}
            work={work}
            points={points}
            onAgain={() => setPoints([])}
            onDone={() => setPoints([])}
            onCancel={() => go(outOf(route))}
          />
        </div>
      </div>
    </div>
  )
}
