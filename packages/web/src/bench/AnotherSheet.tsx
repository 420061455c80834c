/** "What if I already put another one in?": the one that is in, judged, and whether it stays or comes out. */
import { boltPlaced } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { words } from '../words/bench.ts'
import { sentence } from '../words/index.ts'
import { otherIn } from './short.ts'
import type { Bench } from './useBench.ts'

type Props = { bench: Bench; onOut: (hole: string, reason: string) => void; onClose: () => void }

export function AnotherSheet({ bench, onOut, onClose }: Props) {
  const { step, face, kinds, kind, named, answer, folded } = bench
  const [is, setIs] = useState<string | null>(null)
  const hole = step.hole ?? ''
  const judged = is === null ? null : otherIn(answer, hole, is)
  const isIn = Object.keys(folded.faces[face.id]?.holes[hole]?.steps ?? {}).length > 0
  const others = kinds.filter(({ id }) => id !== kind?.id)
  return (
    <Sheet title={words.anotherTitle(hole)} onClose={onClose}>
      <Choice
        label={words.anotherTitle(hole)}
        quiet
        options={others.map(({ id }) => ({ value: id, words: named(id) }))}
        value={is}
        onChoose={setIs}
      />
      {is !== null && judged !== null && (
        <div class="stack" role="status">
          <p
            class={`bench__note bench__note--${judged.verdict === 'fits' ? 'fits' : judged.verdict === 'may' ? 'may' : 'cannot'}`}
          >
            <Icon name={judged.verdict === 'fits' ? 'tick' : 'warning'} size={20} />
            <b dir="auto">
              {judged.verdict === 'cannot'
                ? words.anotherCannot(named(is))
                : judged.verdict === 'may'
                  ? words.anotherMay(named(is))
                  : judged.shortOf.length > 0
                    ? words.anotherFitsButMissing(named(is), judged.shortOf)
                    : words.anotherFits(named(is))}
            </b>
          </p>
          {judged.why !== null && <p>{sentence(judged.why)}</p>}
          {judged.verdict === 'cannot' && <p>{words.anotherCannotWhat}</p>}
          <div class="buttons buttons--even">
            {isIn && (
              <button
                type="button"
                class={`button${judged.verdict === 'cannot' ? ' button--act' : ''}`}
                onClick={() => onOut(hole, words.anotherCannot(named(is)))}
              >
                {words.itComesOut}
              </button>
            )}
            <button
              type="button"
              class={`button${judged.verdict === 'cannot' ? '' : ' button--act'}`}
              onClick={async () => {
                onClose()
                await bench.act([boltPlaced({ face: face.id, hole, kind: is })])
              }}
            >
              {words.itStays}
            </button>
          </div>
        </div>
      )}
    </Sheet>
  )
}
