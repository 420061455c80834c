import type { Assumption, TighteningAnswer } from './answer.ts'

/** An error above this share of the greatest sink could turn the ranking of orders round. */
const ROUGH = 0.05

/** Whether no grid that can be computed follows the cover: its figures are a hint then. */
export function isRough({ accuracy }: Pick<TighteningAnswer, 'accuracy'>): boolean {
  return accuracy.error > ROUGH
}

/** Whether a person should look it up or put it right before the figures are of use; any other only says what the sums take for granted. */
export function isToMind({ what }: Assumption): boolean {
  return what === 'left out' || what === 'usual torque' || what === 'unit load' || what === 'thick'
}
