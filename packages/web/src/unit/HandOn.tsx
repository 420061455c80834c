import { type FoldedUnit, type LeftOut, unitFileOf, writeUnitFile } from '@gripbook/record'
import { useMemo } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { words } from '../words/index.ts'
import { idFromName } from './ids.ts'

/** The unit as a file to hand on, with what a unit file cannot hold. */
export function HandOn({ folded, onClose }: { folded: FoldedUnit; onClose: () => void }) {
  const { book } = useApp()
  const { unit, leftOut } = useMemo(() => unitFileOf(folded), [folded])
  const name = (id: string) => folded.unit.faces.find((face) => face.id === id)?.name ?? id
  return (
    <Sheet title={words.unit.handOn} onClose={onClose}>
      <p>{words.unit.handOnWhat}</p>
      {unit === null ? (
        <p class="empty">{words.unit.nothingYet}</p>
      ) : (
        <button
          type="button"
          class="button button--act"
          onClick={() => download(writeUnitFile(unit), `${idFromName(unit.name ?? '', new Set(), 'unit')}.json`)}
        >
          <Icon name="folder" />
          {words.unit.download}
        </button>
      )}
      <div class="stack stack--tight">
        {leftOut.length > 0 && (
          <>
            <h3>{words.unit.leftOut}</h3>
            <ul class="stack stack--tight">
              {leftOut.map((left, index) => (
                <li key={index} dir="auto" class="hand-on__left">
                  {sayLeftOut(left, name)}
                </li>
              ))}
            </ul>
          </>
        )}
        <p class="quiet">{words.unit.leftOutMore}</p>
      </div>
      {book.name === 'shop' && book.status?.signedIn === 'yes' && (
        <div class="stack stack--tight">
          <p>{words.unit.archiveWhat}</p>
          <a class="button" href={`/api/units/${folded.id}/archive`} download={`${folded.id}.zip`}>
            <Icon name="folder" />
            {words.unit.archive}
          </a>
        </div>
      )}
    </Sheet>
  )
}

function sayLeftOut({ face, item, code }: LeftOut, name: (id: string) => string): string {
  if (code === 'no-holes') return words.unit.leftOutNoHoles(name(face ?? ''))
  const what =
    typeof item === 'object' && item !== null ? Object.values(item).flat(2).map(String).join(' ') : String(item)
  return words.unit.leftOutOther(face === undefined ? null : name(face), what)
}

function download(text: string, name: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: 'application/json' }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  // The browser reads it while it saves; one that asks where to takes its time.
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}
