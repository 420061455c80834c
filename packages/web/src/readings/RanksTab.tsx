/** Deeper than: two taps, no figure. */
import type { Face } from '@gripbook/engine'
import { type FoldedUnit, rankStated } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Choice } from '../parts/Choice.tsx'
import { words } from '../words/index.ts'
import { shortFigure } from './entry.ts'
import { type Spot, same, spotsOf, valueAt } from './quantities.ts'
import { Sketch } from './Sketch.tsx'
import { StatedList } from './StatedList.tsx'
import { Strip } from './Strip.tsx'
import { rankKnown, ranksOf } from './stated.ts'

const COMPARED = ['grip', 'bottomDepth', 'threadDepth', 'length'] as const
type Compared = (typeof COMPARED)[number]

type Props = { folded: FoldedUnit; face: Face; named: (kind: string) => string }

export function RanksTab({ folded, face, named }: Props) {
  const { settings, write } = useApp()
  const [quantity, setQuantity] = useState<Compared>('grip')
  const [more, setMore] = useState<Spot | null>(null)
  const [told, setTold] = useState('')
  const spots = spotsOf(quantity, folded.unit, face)
  const stated = ranksOf(folded, face.id)
  const said = (spot: Spot) => words.readings.spot(spot, named(spot.id))
  const saidRank = (of: Compared, first: string, other: string) => {
    const place = of === 'length' ? 'kind' : 'hole'
    return words.readings.rank(
      of,
      said({ place, id: first }),
      words.readings.ofSpot({ place, id: other }, named(other)),
    )
  }

  async function pick(spot: Spot) {
    setTold('')
    if (more === null) return setMore(spot)
    if (same(more, spot)) return setMore(null)
    const rank = { quantity, less: spot.id, more: more.id }
    const known = rankKnown(stated, rank)
    if (known === 'same') {
      setMore(null)
      setTold(words.readings.rankSame)
      return
    }
    const events = await write(folded.id, [rankStated({ face: face.id, ...rank })], words.readings.rankKept)
    if (events === null) return
    setMore(null)
    setTold(known === 'opposite' ? words.readings.rankOpposite : saidRank(quantity, rank.more, rank.less))
  }

  return (
    <div class="station station--list">
      <div class="station__around">
        <div class="station__now">
          <Sketch of={quantity} size={68} />
          <p class="quiet">{words.readings.compareWhat}</p>
        </div>
        <Choice
          label={words.readings.compare}
          options={COMPARED.map((value) => ({ value, words: words.readings.compareWhich[value] }))}
          value={quantity}
          onChoose={(next) => {
            setQuantity(next)
            setMore(null)
            setTold('')
          }}
        />
        <div class="station__ask" role="status">
          <p class="station__spot">
            {more === null ? words.readings.pickMore[quantity] : words.readings.pickLess(quantity, said(more))}
          </p>
          {told !== '' && <p class="quiet">{told}</p>}
        </div>
        <Strip
          label={words.readings.compareWhich[quantity]}
          cells={spots.map((spot) => {
            const value = valueAt(quantity, spot, folded.unit, face)
            return {
              spot,
              name: named(spot.id),
              value: value === undefined ? null : shortFigure(value, settings.length),
              first: same(spot, more),
            }
          })}
          current={null}
          onPick={(spot) => void pick(spot)}
        />
        {more !== null && (
          <button type="button" class="button button--plain" onClick={() => setMore(null)}>
            {words.readings.pickOther}
          </button>
        )}
      </div>
      <section class="station__list">
        <h2>{words.readings.ranksStated}</h2>
        <StatedList
          unit={folded.id}
          none={words.readings.noRanks}
          lines={stated.map(({ event, said: rank }) => ({
            event,
            line: saidRank(rank.quantity, rank.more, rank.less),
          }))}
        />
      </section>
    </div>
  )
}
