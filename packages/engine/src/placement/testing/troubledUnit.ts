import type { Face, Unit } from '../../unit.ts'
import { generateUnit } from './generateUnit.ts'
import { random } from './random.ts'

/**
 * A face of 15 to 25 holes for the mixed-integer model, coupled by rank lines and roughly known lengths. In every other one something is wrong:
 * a bolt too few, a reading slipped, a rank line the wrong way round.
 */
export function troubledUnit(seed: number): Unit {
  const draw = random(seed * 7919)
  const { unit } = generateUnit(seed, {
    holes: draw.whole(15, 25),
    kinds: draw.whole(4, 8),
    coupled: true,
    stated: true,
  })
  const face: Face = { ...unit.faces[0]!, weigh: { habit: false, asFound: false } }
  for (let left = draw.chance(0.5) ? draw.whole(1, 3) : 0; left > 0; left -= 1) {
    const sort = draw.whole(0, 3)
    if (sort === 0) {
      const { id } = draw.pick(face.kinds!)
      face.kinds = face.kinds!.map((kind) => (kind.id === id ? { ...kind, count: Math.max(0, kind.count! - 1) } : kind))
    } else if (sort === 1) {
      const { id } = draw.pick(face.holes)
      const grip = { value: draw.whole(8, 60), plusMinus: 0.1 }
      face.holes = face.holes.map((hole) => (hole.id === id ? { ...hole, grip } : hole))
    } else if (sort === 2 && face.ranks) {
      const turned = draw.whole(0, face.ranks.length - 1)
      face.ranks = face.ranks.map((rank, at) => (at === turned ? { ...rank, less: rank.more, more: rank.less } : rank))
    } else {
      const { id } = draw.pick(face.kinds!)
      face.kinds = face.kinds!.map((kind) => (kind.id === id ? { ...kind, length: { atLeast: 20, atMost: 70 } } : kind))
    }
  }
  return { ...unit, faces: [face] }
}
