import { type FoldedUnit, photographed } from '@gripbook/record'
import { useMemo, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { PhotographButtons } from '../parts/PhotographButtons.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { place } from '../units/here.ts'
import { sayWhen } from '../units/when.ts'
import { words } from '../words/index.ts'
import { Picture } from './Picture.tsx'
import { unitPhotographs } from './photographs.ts'

/** Each picture is one to fetch and to draw: more than this only when they are asked for. */
const SHOWN = 6

/** The photographs of the unit as a whole; one that is tapped is shown large. */
export function Photographs({ folded }: { folded: FoldedUnit }) {
  const { write } = useApp()
  const taken = useMemo(() => unitPhotographs(folded), [folded])
  const [all, setAll] = useState(false)
  const [open, setOpen] = useState<number | null>(null)
  const one = open === null ? undefined : taken[open]
  const shown = all ? taken : taken.slice(0, SHOWN)
  const named = (index: number) => words.unit.photographNumber(index + 1, taken[index]!.caption)
  return (
    <section class="stack stack--tight">
      <h2>{words.unit.photographs}</h2>
      {taken.length === 0 && <p class="quiet">{words.unit.noPhotographs}</p>}
      <ul class="photographs">
        {shown.map(({ photograph, caption }, index) => (
          <li key={photograph}>
            <button type="button" class="photographs__one" onClick={() => setOpen(index)}>
              <Picture photograph={photograph} alt={caption === null ? named(index) : ''} />
              {caption !== null && (
                <span class="photographs__caption" dir="auto">
                  {caption}
                </span>
              )}
            </button>
          </li>
        ))}
      </ul>
      {taken.length > shown.length && (
        <button type="button" class="button" onClick={() => setAll(true)}>
          {words.unit.allPhotographs(taken.length)}
        </button>
      )}
      <PhotographButtons onKept={(kept) => write(folded.id, [photographed(kept)], words.unit.photographKept)} />
      {one !== undefined && (
        <Sheet title={named(open!)} wide onClose={() => setOpen(null)}>
          <div class="photographs__large">
            <Picture photograph={one.photograph} alt={named(open!)} size={1280} tell />
          </div>
          {one.at !== '' && <p class="quiet">{sayWhen(one.at, Date.now(), place)}</p>}
        </Sheet>
      )}
    </section>
  )
}
