export { handTravel } from './handTravel.ts'
export { type Pattern, patternsFor } from './patterns.ts'
export type { Places } from './places.ts'
