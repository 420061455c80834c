/** What to enter on a face so that its verdict turns over and back; null where a unit has no such place. */
import type { FaceAnswer, Hole, Unit } from '@gripbook/engine'
import { place } from '../packages/engine/src/placement/place.ts'
import { loadSolver } from '../packages/engine/src/placement/testing/highs.ts'

/** A hole whose verdict on what sat in it is another one with each of two kinds; these by their place in the tray. */
export async function turningFound(unit: Unit): Promise<{ hole: string; kinds: [number, number] } | null> {
  for (const { id } of unit.faces[0]!.holes) {
    const said: (string | undefined)[] = []
    for (const kind of unit.faces[0]!.kinds!) {
      const here = (await answerWith(unit, id, { asFound: kind.id })).holes[id]!
      said.push(here.verdict === 'contradicted' ? undefined : here.asFound?.verdict)
    }
    const right = said.indexOf('right')
    const wrong = said.indexOf('must change')
    if (right >= 0 && wrong >= 0) return { hole: id, kinds: [wrong, right] }
  }
  return null
}

/** A hole, and two grips in mm of which each gives another count of settled, open and contradicted holes. */
export async function turningGrip(unit: Unit): Promise<{ hole: string; grips: [number, number] } | null> {
  for (const { id, grip } of unit.faces[0]!.holes) {
    if (typeof grip !== 'object' || !('value' in grip) || grip.unit !== undefined) continue
    const counts = async (value: number) => {
      const answer = await answerWith(unit, id, { grip: { value, plusMinus: 0.05 } })
      return ['settled', 'open', 'contradicted']
        .map((verdict) => Object.values(answer.holes).filter((hole) => hole.verdict === verdict).length)
        .join(' ')
    }
    const there = Math.round(grip.value * 100) / 100
    for (const off of [4, -4, 6, -6, 9, -9]) {
      const other = Math.round((there + off) * 100) / 100
      if (other > 0 && (await counts(there)) !== (await counts(other))) return { hole: id, grips: [other, there] }
    }
  }
  return null
}

async function answerWith(unit: Unit, hole: string, change: Partial<Hole>): Promise<FaceAnswer> {
  const solve = await loadSolver()
  const face = unit.faces[0]!
  const holes = face.holes.map((one) => (one.id === hole ? { ...one, ...change } : one))
  const answer = await place({ ...unit, faces: [{ ...face, holes }] }, { solver: async () => solve })
  return answer.faces[0]!
}
