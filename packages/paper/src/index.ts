export { makeDocument } from './document.ts'
export { FONT_FILES } from './fontFiles.ts'
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
