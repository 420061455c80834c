import type { Person } from '@gripbook/device'

export function PairForm(_: { code?: string; onPaired: (person: Person) => void }) {
  return null
}
