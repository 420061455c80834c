/** What can be read at a face, of what, and where it is kept. */
import type { Face, Kind, Quantity, Unit } from '@gripbook/engine'

export const HOLE_QUANTITIES = ['grip', 'bottomDepth', 'threadDepth', 'mouth', 'bracket', 'gasket', 'behind'] as const
export const KIND_QUANTITIES = ['length', 'threadLength', 'tip'] as const
export type HoleQuantity = (typeof HOLE_QUANTITIES)[number]
export type KindQuantity = (typeof KIND_QUANTITIES)[number]
export type ReadQuantity = HoleQuantity | KindQuantity

/** One thing that is measured. `shared`: a kind of the tray that all faces draw on. */
export type Spot = { place: 'hole' | 'kind' | 'face'; id: string; shared?: true }

export const keyOf = ({ place, id }: Spot): string => `${place} ${id}`
export const same = (a: Spot | null, b: Spot | null): boolean =>
  a === b || (a !== null && b !== null && keyOf(a) === keyOf(b))

export function isKindQuantity(quantity: string): quantity is KindQuantity {
  return (KIND_QUANTITIES as readonly string[]).includes(quantity)
}

export function isReadQuantity(quantity: string): quantity is ReadQuantity {
  return isKindQuantity(quantity) || (HOLE_QUANTITIES as readonly string[]).includes(quantity)
}

/** The kinds that may go into this face: its own, then those that all faces share. */
export function kindsOf(unit: Pick<Unit, 'kinds'>, face: Pick<Face, 'kinds'>): { kind: Kind; shared: boolean }[] {
  return [
    ...(face.kinds ?? []).map((kind) => ({ kind, shared: false })),
    ...(unit.kinds ?? []).map((kind) => ({ kind, shared: true })),
  ]
}

/** What has this quantity, in the order of the face: only a blind hole has a bottom, only a through hole has room behind it. */
export function spotsOf(quantity: ReadQuantity, unit: Pick<Unit, 'kinds'>, face: Face): Spot[] {
  if (isKindQuantity(quantity))
    return kindsOf(unit, face).map(({ kind, shared }) => ({
      place: 'kind',
      id: kind.id,
      ...(shared ? { shared: true as const } : {}),
    }))
  const holes = face.holes
    .filter(({ ending }) => {
      if (quantity === 'bottomDepth') return ending !== 'through'
      return quantity !== 'behind' || ending === 'through'
    })
    .map(({ id }): Spot => ({ place: 'hole', id }))
  return quantity === 'gasket' ? [{ place: 'face', id: face.id }, ...holes] : holes
}

/** What is known of a quantity at a spot. */
export function valueAt(
  quantity: ReadQuantity,
  spot: Spot,
  unit: Pick<Unit, 'kinds'>,
  face: Face,
): Quantity | undefined {
  if (spot.place === 'face') return face.gasket
  if (spot.place === 'hole') return face.holes.find(({ id }) => id === spot.id)?.[quantity as HoleQuantity]
  const own = (spot.shared ? unit : face).kinds
  return own?.find(({ id }) => id === spot.id)?.[quantity as KindQuantity]
}
