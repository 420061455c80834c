/** Every quantity with its place drawn, what it is, and how much of it is read. */
import type { Face, Unit } from '@gripbook/engine'
import { Sheet } from '../parts/Sheet.tsx'
import { words } from '../words/index.ts'
import { HOLE_QUANTITIES, KIND_QUANTITIES, type ReadQuantity, spotsOf, valueAt } from './quantities.ts'
import { Sketch } from './Sketch.tsx'
import './QuantitySheet.css'

type Props = {
  unit: Unit
  face: Face
  current: ReadQuantity
  onPick: (quantity: ReadQuantity) => void
  onClose: () => void
}

export function QuantitySheet({ unit, face, current, onPick, onClose }: Props) {
  const group = (title: string, quantities: readonly ReadQuantity[]) => (
    <section class="stack stack--tight">
      <h3>{title}</h3>
      <ul class="quantities">
        {quantities.map((quantity) => {
          const spots = spotsOf(quantity, unit, face)
          const read = spots.filter((spot) => valueAt(quantity, spot, unit, face) !== undefined).length
          return (
            <li key={quantity}>
              <button
                type="button"
                class="quantities__one"
                aria-current={quantity === current ? 'true' : undefined}
                onClick={() => onPick(quantity)}
              >
                <Sketch of={quantity} size={64} />
                <span class="quantities__words">
                  <span class="quantities__name">{words.readings.names[quantity]}</span>
                  <span class="quiet">{words.readings.whats[quantity]}</span>
                </span>
                {spots.length > 0 && <span class="quantities__count">{words.readings.have(read, spots.length)}</span>}
              </button>
            </li>
          )
        })}
      </ul>
    </section>
  )
  return (
    <Sheet title={words.readings.pickQuantity} onClose={onClose} wide>
      {group(words.readings.ofHoles, HOLE_QUANTITIES)}
      {group(words.readings.ofBolts, KIND_QUANTITIES)}
    </Sheet>
  )
}
