/** Ranges of signs that take two columns in a terminal: East Asian wide and full-width forms, and pictures. Approximate, from memory. */
const WIDE: readonly (readonly [number, number])[] = [
  [0x1100, 0x115f],
  [0x2e80, 0x303e],
  [0x3041, 0xa4cf],
  [0xa960, 0xa97f],
  [0xac00, 0xd7a3],
  [0xf900, 0xfaff],
  [0xfe30, 0xfe6f],
  [0xff00, 0xff60],
  [0xffe0, 0xffe6],
  [0x1f300, 0x1faff],
  [0x20000, 0x3fffd],
]

/** Columns that a text takes in a terminal. Marks that stand over the sign before take none. */
export function width(text: string): number {
  let columns = 0
  for (const sign of text) {
    if (/[\p{Mn}\p{Me}\p{Cf}]/u.test(sign)) continue
    const code = sign.codePointAt(0)!
    columns += WIDE.some(([from, to]) => code >= from && code <= to) ? 2 : 1
  }
  return columns
}

/** The text with blanks after it until it takes `columns`. */
export function padded(text: string, columns: number): string {
  return text + ' '.repeat(Math.max(0, columns - width(text)))
}

/** The text broken into pieces of at most `columns`, inside words: for a name longer than a line. */
export function chopped(text: string, columns: number): string[] {
  const pieces: string[] = []
  let piece = ''
  for (const sign of text) {
    if (piece !== '' && width(piece) + width(sign) > columns) {
      pieces.push(piece)
      piece = ''
    }
    piece += sign
  }
  return piece === '' && pieces.length > 0 ? pieces : [...pieces, piece]
}
