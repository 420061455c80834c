export type { Theme } from './look/palette.ts'
export type { DrawnBolt, DrawnThread, Look, SectionInput } from './section/input.ts'
export { sectionDrawing } from './section/sectionDrawing.ts'
export { type TrayBolt, type TrayInput, trayDrawing } from './tray/trayDrawing.ts'
