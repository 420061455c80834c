import { QuantityField } from '../parts/Field.tsx'

type Props = {
  label: string
  unit: string
  value: string
  hint?: string
  /** Words for what is wrong; empty: nothing. */
  fault: string
  onInput: (text: string) => void
}

/** A figure with its unit behind it, whose fault is told when the form is kept. */
export function WithUnit({ fault, ...field }: Props) {
  return <QuantityField {...field} typed={fault === '' ? { state: 'empty' } : { state: 'fault', words: fault }} />
}
