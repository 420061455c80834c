import type { Face, FaceAnswer, Unit } from '@gripbook/engine'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { drawingTheme } from '../app/look.ts'
import { Drawing } from '../parts/Drawing.tsx'
import { words } from '../words/index.ts'
import { faceByName } from '../workers/called.ts'

type Drawings = Pick<typeof import('../parts/drawings.ts'), 'trayDrawing' | 'trayOfAnswer'>

type Props = { unit: Unit; face: Face; answer: FaceAnswer | null; title: string }

/** The tray to one scale; what draws it comes when it is first wanted. */
export function TrayDrawing({ unit, face, answer, title }: Props) {
  const { settings } = useApp()
  const [drawings, setDrawings] = useState<Drawings | null>(null)
  useEffect(() => {
    let left = false
    void import('../parts/drawings.ts').then(({ trayDrawing, trayOfAnswer }) => {
      if (!left) setDrawings({ trayDrawing, trayOfAnswer })
    })
    return () => {
      left = true
    }
  }, [])
  const theme = drawingTheme(settings)
  const svg = useMemo(() => {
    if (drawings === null) return null
    const look = { theme, unit: settings.length }
    return drawings.trayDrawing(drawings.trayOfAnswer({ ...faceByName(unit, face, answer), title, look }))
  }, [drawings, unit, face, answer, title, theme, settings.length])
  if (svg === null) return <p class="quiet">{words.tray.drawingNow}</p>
  return <Drawing svg={svg} kind="tray" />
}
