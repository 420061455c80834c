import type { Face, FaceAnswer, Hole, Unit } from '@gripbook/engine'
import { useEffect, useId, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { drawingTheme } from '../app/look.ts'
import { Drawing } from '../parts/Drawing.tsx'
import { faceByName } from '../workers/called.ts'

type Props = { unit: Unit; face: Face; hole: Hole; answer: FaceAnswer | null; kind?: string }

/** The hole cut through its axis, with the bolt in it, to scale. The drawing comes in a piece of its own when the first hole is opened. */
export function Section({ unit, face, hole, answer, kind }: Props) {
  const { settings } = useApp()
  const prefix = useId()
  const [svg, setSvg] = useState('')
  const look = { theme: drawingTheme(settings), unit: settings.length }
  useEffect(() => {
    let left = false
    void import('../parts/drawings.ts').then(({ sectionDrawing, sectionOf }) => {
      if (left) return
      const { nameOf, ...named } = faceByName(unit, face, answer)
      const given = {
        ...named,
        hole: named.face.holes.find(({ id }) => id === hole.id) ?? hole,
        look,
        prefix,
        ...(kind === undefined ? {} : { kind: nameOf(kind) }),
      }
      setSvg(sectionDrawing(sectionOf(given)))
    })
    return () => {
      left = true
    }
  }, [unit, face, hole, answer, kind, look.theme, look.unit])
  return svg === '' ? null : <Drawing kind="section" svg={svg} />
}
