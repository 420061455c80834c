/** What is written beside a hole, and how much room it takes. */
import type { SideView } from '../bolt/sideView.ts'
import type { Pen, Type } from '../sheet.ts'

/** `boltScale`: 1 true size, 0 no bolt. `stacked`: number over name, small, for holes that stand close. */
export type LabelStyle = { boltScale: number; stacked: boolean }

/** The roomiest first. */
export const LABEL_STYLES: readonly LabelStyle[] = [
  ...[1, 1 / 2, 1 / 3, 1 / 4, 0].map((boltScale) => ({ boltScale, stacked: false })),
  { boltScale: 0, stacked: true },
]

export type Label = {
  width: number
  height: number
  /** Each line from the label's upper left corner, mm; `y` its base line. */
  texts: { text: string; x: number; y: number; type: Type & { size: number } }[]
  /** The bolt's left end and its axis, and how large it is drawn. */
  bolt?: { view: SideView; x: number; y: number; scale: number }
}

export type LabelWords = { number: string; name: string; said: string; view: SideView | undefined }

const BESIDE = {
  number: { type: { size: 14, bold: true }, most: 16, line: 5.2, base: 4.2, gap: 1.2 },
  name: { type: { size: 9, bold: true }, most: 34, line: 3.6, base: 2.9 },
  said: { type: { size: 6.5 }, most: 34, line: 2.7, base: 2.15, lines: 2 },
  /** Above and below the bolt together, mm. */
  boltGap: 0.8,
}

const STACKED = {
  number: { type: { size: 11, bold: true }, most: 14, line: 3.6, base: 3.2 },
  name: { type: { size: 6.5 }, most: 14, line: 2.5, base: 2 },
  said: { type: { size: 5.5 }, most: 16, line: 2.2, base: 1.8, lines: 2 },
}

type Measure = Pick<Pen, 'widthOf' | 'wrap'>

/** Words that are too wide are cut; the list of holes has them whole. */
export function labelOf(words: LabelWords, style: LabelStyle, pen: Measure): Label {
  return style.stacked ? stacked(words, pen) : beside(words, style.boltScale, pen)
}

function beside({ number, name, said, view }: LabelWords, scale: number, pen: Measure): Label {
  const style = BESIDE
  const texts: Label['texts'] = []
  const shown = pen.wrap(number, style.number.most, style.number.type, 1)[0]!
  texts.push({ text: shown, x: 0, y: style.number.base, type: style.number.type })
  const numberWidth = pen.widthOf(shown, style.number.type)
  const x = numberWidth + style.number.gap
  let y = 0
  let width = 0
  if (name !== '') {
    const text = pen.wrap(name, style.name.most, style.name.type, 1)[0]!
    texts.push({ text, x, y: style.name.base, type: style.name.type })
    width = pen.widthOf(text, style.name.type)
    y = style.name.line
  }
  let bolt: Label['bolt']
  if (view && scale > 0) {
    bolt = { view, x, y: y + style.boltGap / 2 + view.radius * scale, scale }
    width = Math.max(width, (view.head + view.length) * scale)
    y += 2 * view.radius * scale + style.boltGap
  }
  for (const text of said === '' ? [] : pen.wrap(said, style.said.most, style.said.type, style.said.lines)) {
    texts.push({ text, x, y: y + style.said.base, type: style.said.type })
    width = Math.max(width, pen.widthOf(text, style.said.type))
    y += style.said.line
  }
  const height = Math.max(style.number.line, y)
  return { width: width > 0 ? x + width : numberWidth, height, texts, ...(bolt ? { bolt } : {}) }
}

function stacked({ number, name, said }: LabelWords, pen: Measure): Label {
  const texts: Label['texts'] = []
  let [y, width] = [0, 0]
  const lines = [
    { ...STACKED.number, text: number, lines: 1 },
    { ...STACKED.name, text: name, lines: 1 },
    { ...STACKED.said, text: said },
  ].filter(({ text }) => text !== '')
  for (const { text, type, most, line, base, lines: mostLines } of lines) {
    for (const shown of pen.wrap(text, most, type, mostLines)) {
      texts.push({ text: shown, x: 0, y: y + base, type })
      width = Math.max(width, pen.widthOf(shown, type))
      y += line
    }
  }
  return { width, height: y, texts }
}
