export type { Theme } from './look/palette.ts'
export type { DrawnBolt, DrawnThread, Look, SectionInput } from './section/input.ts'
export { sectionDrawing } from './section/sectionDrawing.ts'
