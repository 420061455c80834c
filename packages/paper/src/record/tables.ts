/** The tables of a build record beside those of the faces: figures, readings, parts, stops, clocks, words, signatures. */
import { writeQuantity } from '@gripbook/engine'
import type { BuildRecord, BuiltFigure, BuiltPart, TakenFigure } from '@gripbook/record'
import type { Cell, Sheet } from '../sheet.ts'
import {
  atWords,
  boltsWords,
  byWords,
  faceNamed,
  instrumentWords,
  limitWords,
  partWords,
  placeWords,
  spaced,
  takenWords,
  timeWords,
  whoWords,
} from './figureWords.ts'
import { whyWords } from './stopWords.ts'
import { words } from './words.ts'

const SIZE = 8.5

export function writeStops(sheet: Sheet, { stops }: BuildRecord): void {
  if (stops.length === 0) return
  const say = words.stops
  sheet.heading(2, say.heading)
  sheet.table({
    summary: say.summary,
    columns: [
      { title: say.what, share: 3 },
      { title: say.stop, share: 3 },
      { title: say.who, share: 3.5 },
    ],
    rows: stops.map(({ says, gate, stops: reasons, override, ...done }): Cell[] => [
      reasons.length === 0 ? say.said : `${says} (${byWords(done)})`,
      [say.gates[gate], ...new Set(reasons.map(({ why }) => whyWords(why)))].join(': '),
      override === undefined
        ? { text: say.silent, bold: true }
        : { text: `${byWords(override)}: ${override.reason}`, bold: true },
    ]),
    size: SIZE,
    rowHeads: false,
  })
}

export function writeResistances(sheet: Sheet, { resistances, faces }: BuildRecord): void {
  if (resistances.length === 0) return
  const say = words.resistances
  sheet.heading(2, say.heading)
  sheet.table({
    summary: say.summary,
    columns: [
      { title: say.where, share: 2 },
      { title: say.felt, share: 3 },
      { title: say.found, share: 4 },
    ],
    rows: resistances.map(({ face, hole, feel, turns, cleared, ...done }): Cell[] => [
      placeWords(['face', face, 'hole', hole], faces),
      `${turns === undefined ? feel : say.after(feel, turns)} (${byWords(done)})`,
      cleared === undefined ? { text: say.stands, bold: true } : `${cleared.found} (${byWords(cleared)})`,
    ]),
    size: SIZE,
  })
}

export function writeFigures(sheet: Sheet, { figures }: BuildRecord): void {
  if (figures.length === 0) return
  const say = words.figures
  sheet.heading(2, say.heading)
  sheet.table({
    summary: say.summary,
    columns: [
      { title: say.name, share: 2.2 },
      { title: say.before, share: 2 },
      { title: say.after, share: 2 },
      { title: say.limit, share: 2 },
      { title: say.verdict, share: 2.4 },
    ],
    rows: figures.map((figure): Cell[] => [
      figure.name,
      figure.before === undefined ? words.face.unknown : takenCell(figure.before),
      endCell(figure),
      figure.limit === undefined ? words.face.unknown : `${limitWords(figure.limit)} (${figure.limit.source})`,
      verdictCell(figure),
    ]),
    size: SIZE,
  })
}

/** The reading at the end, then those that count no more. */
function endCell({ during, after, earlier = [] }: BuiltFigure): string {
  const say = words.figures
  const last = after === undefined ? during && say.during(takenCell(during)) : takenCell(after)
  return [last ?? words.face.unknown, ...earlier.map((old) => say.earlier(takenWords(old), old.at.slice(0, 10)))].join(
    '; ',
  )
}

function takenCell(figure: TakenFigure): string {
  return [
    takenWords(figure),
    ...(figure.conditions === undefined ? [] : [figure.conditions]),
    ...(figure.instrument === undefined ? [] : [instrumentWords(figure.instrument)]),
  ].join(', ')
}

function verdictCell({ verdict, waived }: BuiltFigure): Cell {
  const text =
    waived === undefined ? words.figures.verdicts[verdict] : words.figures.waived(byWords(waived), waived.reason)
  return { text, bold: verdict !== 'inside' && verdict !== 'no limit' }
}

export function writeReadings(sheet: Sheet, { readings, faces }: BuildRecord): void {
  if (readings.length === 0) return
  const say = words.readings
  sheet.heading(2, say.heading)
  sheet.table({
    summary: say.summary,
    columns: [
      { title: say.what, share: 2.8 },
      { title: say.value, share: 1.7 },
      { title: say.instrument, share: 4 },
      { title: say.who, share: 2.8 },
    ],
    rows: readings.map(({ place, quantity, value, instrument, repeated, note, replaced, ...done }): Cell[] => [
      say.of(spaced(quantity), placeWords(place, faces)),
      `${writeQuantity(value)}${replaced ? ` (${say.replaced})` : ''}`,
      [
        ...(instrument === undefined ? [] : [instrumentWords(instrument)]),
        ...(repeated === undefined ? [] : [say.repeated(repeated.length)]),
        ...(note === undefined ? [] : [note]),
      ].join('; ') || words.face.unknown,
      byWords(done),
    ]),
    size: 8,
  })
}

export function writeWrenches(sheet: Sheet, { wrenches }: BuildRecord): void {
  if (wrenches.length === 0) return
  const say = words.wrenches
  sheet.heading(2, say.heading)
  sheet.table({
    summary: say.summary,
    columns: [
      { title: say.tool, share: 4 },
      { title: say.number, share: 1.4 },
      { title: say.until, share: 3 },
      { title: say.bolts, share: 1.6, align: 'end' },
    ],
    rows: wrenches.map(({ name, number, calibratedUntil, outOfCalibration, bolts }): Cell[] => [
      name,
      number ?? words.face.unknown,
      calibratedUntil === undefined
        ? say.notSaid
        : { text: outOfCalibration ? say.out(calibratedUntil) : calibratedUntil, bold: outOfCalibration },
      String(bolts),
    ]),
    size: SIZE,
  })
}

export function writeParts(sheet: Sheet, record: BuildRecord): void {
  const { parts, plugs, bolts, fits, faces } = record
  if (parts.length + plugs.length + bolts.length + fits.length === 0) return
  const say = words.parts
  sheet.heading(2, say.heading)
  if (parts.length > 0)
    sheet.table({
      summary: say.summary,
      columns: [
        { title: say.part, share: 2.2 },
        { title: say.where, share: 2.6 },
        { title: say.condition, share: 2 },
        { title: say.fate, share: 3.4 },
      ],
      rows: parts.map((part): Cell[] => [
        partWords(part),
        whereWords(part, faces),
        part.condition ?? words.face.unknown,
        fateCell(part),
      ]),
      size: SIZE,
    })
  const lines = [
    ...bolts.map((bolt) => `${boltsWords(bolt, faces)}, ${byWords(bolt)}`),
    ...fits.map(
      ({ place, part, thickness, reason, ...done }) =>
        `${words.fit(place, part)}${thickness === undefined ? '' : `, ${writeQuantity(thickness)}`}${reason === undefined ? '' : ` (${reason})`}, ${byWords(done)}`,
    ),
  ]
  if (lines.length > 0) {
    sheet.heading(3, bolts.length > 0 ? `${say.bolts}, ${say.fits.toLowerCase()}` : say.fits)
    sheet.list(lines, { size: SIZE })
  }
  if (plugs.length === 0) return
  sheet.heading(3, say.plugs)
  sheet.table({
    summary: say.plugsSummary,
    columns: [
      { title: say.plug, share: 1 },
      { title: say.found, share: 2 },
      { title: say.placed, share: 2 },
      { title: say.wires, share: 3 },
    ],
    rows: plugs.map(({ id, found, placed, tag, colours = [] }): Cell[] => [
      id,
      found ?? words.face.unknown,
      placed === undefined
        ? { text: say.notIn, bold: true }
        : { text: placed, bold: found !== undefined && found !== placed },
      [...(tag === undefined ? [] : [tag]), ...colours].join(' ') || words.face.unknown,
    ]),
    size: SIZE,
  })
}

function whereWords(part: BuiltPart, faces: BuildRecord['faces']): string {
  const { place, wayRound } = part
  return (
    [
      ...atWords(part, faces),
      ...(place === undefined ? [] : [place]),
      ...(wayRound === undefined ? [] : [wayRound]),
    ].join(', ') || words.face.unknown
  )
}

function fateCell({ fate, by, reason, fateBy, wentIn }: BuiltPart): Cell {
  const text = [
    `${words.parts.fates[fate]}${by === undefined ? '' : ` by ${by}`}`,
    ...(wentIn?.wayRound === undefined ? [] : [wentIn.wayRound]),
    ...(reason === undefined ? [] : [reason]),
    ...(fateBy === undefined ? [] : [byWords(fateBy)]),
  ].join(', ')
  return { text, bold: fate === 'out' }
}

export function writeClocks(sheet: Sheet, { clocks, faces }: BuildRecord): void {
  if (clocks.length === 0) return
  const say = words.clocks
  sheet.heading(2, say.heading)
  sheet.table({
    summary: say.summary,
    columns: [
      { title: say.what, share: 4 },
      { title: say.set, share: 1.5 },
      { title: say.ran, share: 3.5 },
    ],
    rows: clocks.map(({ what, face, minutes, started, ran, over }): Cell[] => [
      `${what}${face === undefined ? '' : ` (${faceNamed(faces, face)})`}`,
      say.minutes(minutes),
      ran === undefined
        ? { text: `${say.runs}, ${byWords(started)}`, bold: true }
        : {
            text: `${say.minutes(ran)}${over === undefined ? '' : `, ${say.over(over)}`}, ${byWords(started)}`,
            bold: over !== undefined,
          },
    ]),
    size: SIZE,
  })
}

export function writeNotes(sheet: Sheet, { notes, faces, openedBefore, since, undone }: BuildRecord): void {
  if (openedBefore.length > 0) {
    sheet.heading(2, words.signs)
    sheet.list(
      openedBefore.map((seen) => [seen.sign, ...atWords(seen, faces), byWords(seen)].join(', ')),
      { size: SIZE },
    )
  }
  if (notes.length > 0) {
    const say = words.notes
    sheet.heading(2, say.heading)
    sheet.table({
      summary: say.summary,
      columns: [
        { title: say.what, share: 6 },
        { title: say.where, share: 1.8 },
        { title: say.who, share: 2.4 },
      ],
      rows: notes.map(({ decided, text, reason, ...note }): Cell[] => {
        const said = decided ? say.decided(text) : text
        return [
          { text: reason === undefined ? said : say.because(said, reason), bold: decided },
          atWords(note, faces)[0] ?? words.face.unknown,
          byWords(note),
        ]
      }),
      size: SIZE,
      rowHeads: false,
    })
  }
  if (since.length > 0) {
    sheet.heading(2, words.since)
    sheet.table({
      summary: words.sinceSummary,
      columns: [
        { title: words.notes.what, share: 7 },
        { title: words.notes.who, share: 2.4 },
      ],
      rows: since.map(({ says, ...done }): Cell[] => [{ text: says, bold: true }, byWords(done)]),
      size: SIZE,
      rowHeads: false,
    })
  }
  if (undone.length === 0) return
  sheet.heading(2, words.undone)
  sheet.table({
    summary: words.undoneSummary,
    columns: [
      { title: words.notes.what, share: 5 },
      { title: words.notes.who, share: 2.4 },
      { title: words.takenBack, share: 3 },
    ],
    rows: undone.map(({ says, by, ...done }): Cell[] => [
      says,
      byWords(done),
      words.undoneBy(whoWords(by.who), timeWords(by.at), by.reason),
    ]),
    size: SIZE,
    rowHeads: false,
  })
}
