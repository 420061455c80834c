/** "I am one short": where the others of this kind went, what else fits, what to get. */
import { Icon } from '../look/icons.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { words } from '../words/bench.ts'
import { shortOf } from './short.ts'
import type { Bench } from './useBench.ts'

export function ShortSheet({ bench, onClose }: { bench: Bench; onClose: () => void }) {
  const { folded, face, answer, step, kind, kinds, named } = bench
  const found = shortOf(folded, face, answer, step.hole ?? '', kind?.id ?? null)
  const name = kind === null ? words.noKind : named(kind.id)
  const lines = [
    ...(kind === null
      ? []
      : [
          found.wrong.length > 0 ? words.shortWrong(found.wrong) : null,
          found.placed.length > 0 ? words.shortPlaced(name, found.placed) : words.shortNone(name),
          kinds.find(({ id }) => id === kind.id)?.count === undefined || found.wanted === null
            ? null
            : words.shortCount(name, kind.count!, found.wanted),
          found.otherFaces.length > 0 ? words.shortElsewhere(name, found.otherFaces) : null,
        ]),
    found.instead.length > 0 ? words.shortInstead(found.instead.map(named)) : words.shortNothing,
    found.sizes.length > 0 ? words.shortGet(found.sizes) : null,
  ].filter((line) => line !== null)
  return (
    <Sheet title={kind === null ? words.short : words.shortTitle(name)} onClose={onClose}>
      <ul class="stack stack--tight">
        {lines.map((line) => (
          <li key={line} class="bench__note" dir="auto">
            <Icon name="search" size={20} />
            {line}
          </li>
        ))}
      </ul>
      <p>
        <b>{words.shortNever}</b>
      </p>
    </Sheet>
  )
}
