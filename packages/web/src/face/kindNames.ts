import type { Kind } from '@gripbook/engine'
import { sizeName } from '@gripbook/print'

/** How kinds are called: `short` in the little room beside a mark, `long` in sentences. */
export type Names = { short: Map<string, string>; long: Map<string, string> }

/**
 * "×45" and "M6×45" where all are of one thread, "M8×45" for both where not; with its first feature or its id where two would be called alike.
 */
export function namesOf(kinds: readonly Kind[]): Names {
  const oneThread = new Set(kinds.map(({ thread }) => String(thread))).size === 1
  const short = (kind: Kind) => {
    const name = sizeName(kind)
    const at = name.indexOf('×')
    return oneThread && at > 0 ? name.slice(at) : name
  }
  return { short: toldApart(kinds, short), long: toldApart(kinds, sizeName) }
}

function toldApart(kinds: readonly Kind[], bare: (kind: Kind) => string): Map<string, string> {
  const alike = grouped(kinds, bare)
  return new Map(
    kinds.map((kind) => {
      const name = bare(kind)
      const others = alike.get(name)!
      if (others.length === 1) return [kind.id, name]
      const feature = kind.features?.[0]
      const sameFeature = others.filter((one) => one.features?.[0] === feature)
      if (sameFeature.length > 1) return [kind.id, `${name} ${kind.id}`]
      return [kind.id, feature === undefined ? name : `${name} ${feature}`]
    }),
  )
}

function grouped<T>(items: readonly T[], by: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>()
  for (const item of items) groups.set(by(item), [...(groups.get(by(item)) ?? []), item])
  return groups
}
