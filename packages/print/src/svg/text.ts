import { FONT } from '../look/palette.ts'
import { type Attributes, element, escapeXml } from './element.ts'

/**
 * Width that one character may take, in type heights. Drawn text is never measured (there is no screen here), so the widths are those of a
 * wide sans serif: a narrower system font leaves room, never an overlap. Regular weight; bold takes a tenth more.
 */
function widthOf(character: string): number {
  if (/[iljI.,:;|!' \u00a0()[\]\u00b7]/.test(character)) return 0.4
  if (/[mwMW@%\u2014]/.test(character)) return 1
  if (/[A-Z]/.test(character)) return 0.76
  if (character < '\u0250') return 0.64
  if (/[\p{Mn}\p{Cf}]/u.test(character)) return 0
  if (/[\u1100-\u11ff\u2e80-\u9fff\uac00-\ud7ff\uf900-\ufaff\uff00-\uff60]/.test(character)) return 1.05
  return character.codePointAt(0)! > 0xffff ? 1.4 : 0.8
}

export function textWidth(text: string, size: number, bold = false): number {
  let width = 0
  for (const character of text) width += widthOf(character)
  return width * size * (bold ? 1.1 : 1)
}

/** Pieces that may be parted from each other but not inside: graphemes, so that no emoji and no accent is torn. */
const GRAPHEMES = new Intl.Segmenter(undefined, { granularity: 'grapheme' })

function breakWord(word: string, width: number, size: number, bold: boolean): string[] {
  const pieces: string[] = []
  let piece = ''
  for (const { segment } of GRAPHEMES.segment(word)) {
    if (piece !== '' && textWidth(piece + segment, size, bold) > width) {
      pieces.push(piece)
      piece = ''
    }
    piece += segment
  }
  return piece === '' ? pieces : [...pieces, piece]
}

/** Lines no wider than `width` px; a word that is wider by itself is broken. At most `most` lines: the last one then ends in "…". */
export function wrap(
  text: string,
  width: number,
  size: number,
  { bold = false, most = Number.POSITIVE_INFINITY } = {},
) {
  const words = text.split(/[ \t\r\n]+/).filter((word) => word !== '')
  const pieces = words.flatMap((word) =>
    breakWord(word, width, size, bold).map((piece, i) => ({ piece, glued: i > 0 })),
  )
  const lines: string[] = []
  for (const { piece, glued } of pieces) {
    const last = lines.at(-1)
    const longer = last === undefined || glued ? undefined : `${last} ${piece}`
    if (longer !== undefined && textWidth(longer, size, bold) <= width) lines[lines.length - 1] = longer
    else lines.push(piece)
  }
  if (lines.length <= most) return lines
  const kept = lines.slice(0, most)
  let end = kept[most - 1]!
  while (end !== '' && textWidth(`${end}…`, size, bold) > width) end = [...end].slice(0, -1).join('')
  kept[most - 1] = `${end}…`
  return kept
}

const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/

/** A name that a person typed, kept from turning round the words beside it when it is written from right to left. */
export function named(text: string): string {
  return RIGHT_TO_LEFT.test(text) ? `\u2068${text}\u2069` : text
}

export type Type = { size: number; fill: string; bold?: boolean; anchor?: 'start' | 'middle' | 'end' }

/** One line of text, `y` its base line. Its box is written beside it, so that a check can see that no two texts meet. */
export function textLine(
  text: string,
  x: number,
  y: number,
  { size, fill, bold = false, anchor = 'start' }: Type,
): string {
  const attributes: Attributes = {
    x,
    y,
    'font-family': FONT,
    'font-size': size,
    'font-weight': bold ? 700 : undefined,
    'text-anchor': anchor === 'start' ? undefined : anchor,
    fill,
    'data-width': textWidth(text, size, bold),
  }
  return element('text', attributes, escapeXml(text))
}
