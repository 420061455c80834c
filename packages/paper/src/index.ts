export {
  type Board,
  type BoardFace,
  type BoardFault,
  type BoardOptions,
  boltBoard,
  MOST_SHEETS,
} from './board/boltBoard.ts'
export { type Marks, marksOf } from './board/places.ts'
export { makeDocument } from './document.ts'
export { FONT_FILES } from './fontFiles.ts'
export { type LearnerOptions, learnerSheet } from './learner/learnerSheet.ts'
export { buildRecordPdf, type RecordPaper } from './record/buildRecordPdf.ts'
export type {
  Box,
  Cell,
  Column,
  DocumentOptions,
  Fonts,
  Look,
  PaperSize,
  Pen,
  Place,
  Sheet,
  Table,
  Type,
} from './sheet.ts'
