export type * from './answer.ts'
export { coverUnder } from './coverUnder.ts'
export { USUAL_SHARES } from './passes.ts'
export { planTightening } from './planTightening.ts'
