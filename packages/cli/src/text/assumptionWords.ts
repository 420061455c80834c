import { type Assumption, isRough, isToMind, type TighteningAnswer } from '@gripbook/engine'
import { figure } from './jointFigures.ts'
import { listed } from './list.ts'
import { percentOf } from './spreadWords.ts'

type Of<W extends Assumption['what']> = Extract<Assumption, { what: W }>
type Words = { [W in Assumption['what']]: (assumption: Of<W>, all: number) => string }

const WORDS: Words = {
  estimate: () =>
    'An estimate that ranks orders, no promise of kN: the cover counts as an elastic plate on an even bed, and a real casting has walls and ribs.',
  flat: () =>
    'Flat covers only: a warped cover, or sealant that must flow out, is not in the sums. They are why shops work from the middle outward.',
  aluminium: () => 'The cover is taken as aluminium, 70000 MPa and 0.33: "young" or "poisson" is not stated.',
  thickness: () => 'A thickness of the cover is stated as a range: the middle of it is taken.',
  'bolt stiffness': ({ holes }, all) => `Stiffness worked out from size and grip: ${these(holes, all)}.`,
  torque: ({ holes }, all) => `Target load from the torque at middling friction: ${these(holes, all)}.`,
  'usual torque': ({ holes }, all) =>
    `Neither torque nor clamp is stated for ${these(holes, all)}: the usual torque of the size is taken. Look the manual’s up.`,
  'unit load': () => 'Neither thread nor torque is known: 1000 N for every bolt. Shares say something, loads do not.',
  thick: ({ bendingLength }) =>
    `Cover and bed bend over ${figure(bendingLength, 1)} mm only, less than the thickness: bolts hardly feel each other here, and the theory says little.`,
  'left out': ({ holes }, all) =>
    `The stated order never comes to ${these(holes, all)}. Look the order up again: what it leaves out stays loose in its figures.`,
  'lift-off': ({ share }) =>
    `The cover lifts off its bed in places. The loads count that; it changes one of them by ${percentOf(share)} at most.`,
}

/** What a person should put right or look up, and what the sums take for granted, each in plain words. */
export function assumptionWords(answer: TighteningAnswer): {
  mind: string[]
  taken: string[]
} {
  const { assumptions, holes, accuracy } = answer
  const say = (one: Assumption): string =>
    (WORDS[one.what] as (one: Assumption, all: number) => string)(one, holes.length)
  const grid = `Grid of ${figure(accuracy.grid, 1)} mm; the sink under a bolt is right to about ${percentOf(accuracy.error)} of the greatest.`
  const rough = isRough(answer)
  return {
    mind: [
      ...assumptions.filter(isToMind).map(say),
      ...(rough ? [`${grid} No finer grid can be computed for such a cover: take the figures as a hint.`] : []),
    ],
    taken: [
      ...assumptions.filter((one) => !isToMind(one)).map(say),
      'Friction is taken as the same in all bolts. Clean threads and the same oil on all of them make it so; one dry thread among them can move its load more than any order does.',
      ...(rough ? [] : [grid]),
    ],
  }
}

function these(holes: readonly string[], all: number): string {
  if (holes.length === all) return all === 1 ? 'the bolt' : 'all bolts'
  return `${holes.length === 1 ? 'bolt' : 'bolts'} ${listed(holes)}`
}
