export { burdenOf } from './burden.ts'
export { handTravel } from './handTravel.ts'
export { type Pattern, patternsFor } from './patterns.ts'
export { searchOrder } from './search.ts'
