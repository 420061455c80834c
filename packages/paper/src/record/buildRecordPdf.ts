import type { BuildRecord } from '@gripbook/record'
import { makeDocument } from '../document.ts'
import type { Fonts, PaperSize, Sheet } from '../sheet.ts'
import { writeCautions, writeHowToCheck, writePhotographs, writeSignatures, writeUnsettled } from './ending.ts'
import { writeFace } from './facePages.ts'
import { writeFront } from './front.ts'
import { type Picture, pictureOf } from './picture.ts'
import { openWords } from './stopWords.ts'
import {
  writeClocks,
  writeFigures,
  writeNotes,
  writeParts,
  writeReadings,
  writeResistances,
  writeStops,
  writeWrenches,
} from './tables.ts'
import { words } from './words.ts'

export type RecordPaper = {
  fonts: Fonts
  paper: PaperSize
  /** JPEG or PNG by the name that entries call each by; any size, marks are placed by the size that the entries state. */
  photographs: ReadonlyMap<string, Uint8Array>
  /** When it is said to be made: the time of the last entry, so that the same record gives the same bytes. */
  made: Date
}

/** The build record as a PDF: tagged, its text selectable, the same bytes for the same record and photographs. */
export function buildRecordPdf(
  record: BuildRecord,
  { fonts, paper, photographs, made }: RecordPaper,
): Promise<Uint8Array> {
  const unit = record.unit.name ?? words.unnamed
  return makeDocument(
    {
      title: words.title(unit),
      made,
      fonts,
      paper,
      footer: { left: words.state[record.state], right: `${unit}, ${record.hash.slice(0, 16)}` },
    },
    (sheet) => write(sheet, record, (photograph) => pictureOf(photographs.get(photograph))),
  )
}

function write(sheet: Sheet, record: BuildRecord, pictureNamed: (photograph: string) => Picture): void {
  const isStory = record.state !== 'state only'
  writeFront(sheet, record)
  if (record.open.length > 0) {
    sheet.heading(2, words.open(record.open.length))
    sheet.list(record.open.map(({ why }) => openWords(why)))
  }
  if (isStory) {
    writeStops(sheet, record)
    writeResistances(sheet, record)
    writeFigures(sheet, record)
  }
  for (const face of record.faces) {
    const { photograph } = face
    writeFace(sheet, face, photograph === undefined ? undefined : pictureNamed(photograph.photograph), isStory)
  }
  if (isStory) {
    writeWrenches(sheet, record)
    writeParts(sheet, record)
    writeClocks(sheet, record)
    writeNotes(sheet, record)
    writeReadings(sheet, record)
    writePhotographs(sheet, record, pictureNamed)
  } else writeParts(sheet, record)
  writeUnsettled(sheet, record)
  writeCautions(sheet, record)
  if (isStory) writeSignatures(sheet, record)
  writeHowToCheck(sheet, record)
}
