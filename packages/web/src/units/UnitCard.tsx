import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'
import { Go } from './Go.tsx'
import { place } from './here.ts'
import type { UnitLine } from './unitLines.ts'
import { sayWhen } from './when.ts'

export function UnitCard({ line }: { line: UnitLine }) {
  const about = [line.model, line.job === null ? null : words.units.job(line.job)].filter((text) => text !== null)
  return (
    <Go
      to={{ at: 'unit', book: 'shop', unit: line.unit }}
      class={`unit-card${line.where === 'here' ? '' : ' unit-card--shop'}`}
    >
      <h2 class="unit-card__name" dir="auto">
        {line.name ?? words.units.noName}
      </h2>
      {about.length > 0 && (
        <p class="quiet" dir="auto">
          {about.join(' · ')}
        </p>
      )}
      {line.complaint !== null && (
        <p class="unit-card__line" dir="auto">
          {line.complaint}
        </p>
      )}
      <p class="unit-card__state quiet">
        {line.faces !== null && <span>{words.units.faces(line.faces)}</span>}
        {line.where === 'in the shop' && (
          <span class="sign">
            <Icon name="folder" size={18} />
            {words.units.inShop}
          </span>
        )}
        {line.released && (
          <span class="sign sign--fits">
            <Icon name="tick" size={18} />
            {words.units.released}
          </span>
        )}
        {line.back && (
          <span class="sign sign--may">
            <Icon name="undo" size={18} />
            {words.units.back}
          </span>
        )}
        {line.waits && (
          <span class="sign sign--may">
            <Icon name="waiting" size={18} />
            {words.units.waits}
          </span>
        )}
        {line.lastAt !== null && <span>{words.units.last(sayWhen(line.lastAt, Date.now(), place))}</span>}
      </p>
    </Go>
  )
}
