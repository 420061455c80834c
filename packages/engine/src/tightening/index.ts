export type * from './answer.ts'
export { coverUnder } from './coverUnder.ts'
export { type FacePass, facePasses, USUAL_SHARES, visitsOf } from './facePasses.ts'
export { planTightening } from './planTightening.ts'
