export type * from './answer.ts'
export { coverUnder } from './coverUnder.ts'
export { planTightening, USUAL_SHARES } from './planTightening.ts'
