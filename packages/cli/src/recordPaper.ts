import { type PlacementAnswer, place } from '@gripbook/engine'
import type { PaperSize } from '@gripbook/paper'
import { buildRecordOf, fold, sha256OfText, unitFileOf } from '@gripbook/record'
import type { PaperMaker } from '@gripbook/server'
import { loadFonts } from './fonts.ts'
import { loadSolver } from './highs.ts'

/** Makes build records, with the printer loaded when the first is wanted: what belongs where is computed from the sizes that the record holds. */
export function recordPaper(paper: PaperSize = 'A4'): PaperMaker {
  return async ({ unit, events, people, shop, photographs }) => {
    const folded = fold(unit, events)
    const file = unitFileOf(folded).unit
    const answer: PlacementAnswer | undefined = file === null ? undefined : await place(file, { solver: loadSolver })
    const record = buildRecordOf(folded, {
      people,
      shop,
      hash: sha256OfText,
      ...(answer === undefined ? {} : { answer }),
    })
    const { buildRecordPdf } = await import('@gripbook/paper')
    const made = new Date(record.last ?? 0)
    return buildRecordPdf(record, { fonts: await loadFonts(), paper, photographs, made })
  }
}
