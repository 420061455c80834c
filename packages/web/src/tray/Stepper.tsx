import { Icon } from '../look/icons.tsx'
import './Stepper.css'

type Props = { value: string; said: string; less: string; more: string; atLeast: boolean; onStep: (by: 1 | -1) => void }

/** A count with its two large buttons. */
export function Stepper({ value, said, less, more, atLeast, onStep }: Props) {
  return (
    <div class="stepper">
      <button type="button" class="stepper__button" aria-label={less} disabled={atLeast} onClick={() => onStep(-1)}>
        <Icon name="minus" />
      </button>
      <span class="stepper__value">
        <span class="unseen">{said} </span>
        {value}
      </span>
      <button type="button" class="stepper__button" aria-label={more} onClick={() => onStep(1)}>
        <Icon name="plus" />
      </button>
    </div>
  )
}
