/** The kinds of a tray, each with its count under the thumb. */
import { type Kind, writeQuantity } from '@gripbook/engine'
import { kindDescribed } from '@gripbook/record'
import { useEffect, useRef } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'
import { Stepper } from './Stepper.tsx'

export type Laid = { kind: Kind; shared: boolean }

type Props = {
  unit: string
  face: string
  kinds: readonly Laid[]
  named: (kind: string) => string
  onOpen: (kind: Laid) => void
}

export function KindList({ unit, face, kinds, named, onOpen }: Props) {
  const { write } = useApp()
  /** Counts that are on their way to the disk: the next tap goes on from them. */
  const coming = useRef(new Map<string, number>())
  useEffect(() => coming.current.clear(), [kinds])

  async function step({ kind, shared }: Laid, by: 1 | -1) {
    const count = Math.max(0, (coming.current.get(kind.id) ?? kind.count ?? 0) + by)
    coming.current.set(kind.id, count)
    const body = { ...(shared ? {} : { face }), kind: kind.id, count }
    const events = await write(unit, [kindDescribed(body)], words.tray.countKept(named(kind.id), count))
    if (events === null) coming.current.delete(kind.id)
  }

  return (
    <ul class="kinds">
      {kinds.map((laid) => {
        const { kind, shared } = laid
        const name = named(kind.id)
        const { count } = kind
        return (
          <li key={`${shared} ${kind.id}`} class="kinds__one">
            <button
              type="button"
              class="kinds__open"
              aria-label={words.tray.edit(name)}
              aria-describedby={`about-${shared ? 'shared' : 'own'}-${kind.id}`}
              onClick={() => onOpen(laid)}
            >
              <span class="kinds__name" dir="auto">
                {name}
                <Icon name="change" size={18} />
              </span>
              <span class="kinds__about" id={`about-${shared ? 'shared' : 'own'}-${kind.id}`} dir="auto">
                {[...aboutOf(kind), ...(shared ? [words.tray.shared] : [])].join(' · ')}
              </span>
            </button>
            <Stepper
              value={count === undefined ? words.tray.countUnknown : String(count)}
              said={count === undefined ? words.tray.countUnknownSaid : words.tray.count(name)}
              less={words.tray.oneLess(name)}
              more={words.tray.oneMore(name)}
              atLeast={count === undefined || count === 0}
              onStep={(by) => void step(laid, by)}
            />
          </li>
        )
      })}
    </ul>
  )
}

/** What tells a kind apart, beside its name: its length as it was read, class, features, note. */
function aboutOf({ id, length, class: mark, features = [], head, note }: Kind): string[] {
  return [
    id,
    length === undefined ? words.tray.lengthUnknown : writeQuantity(length),
    ...(mark === undefined ? [] : [mark]),
    ...(head === undefined ? [] : [words.tray.headForms[head.form] ?? head.form]),
    ...features,
    ...(note === undefined ? [] : [note]),
  ]
}
