import { encode } from 'uqr'
import type { Pen } from '../sheet.ts'

/** Modules of white that a reader needs around the code. @source ISO/IEC 18004, quiet zone */
const QUIET = 4

/** The squares of a QR code with its quiet margin, as areas, in a square of `size` mm. Throws when the text is too long for one. */
export function drawQr(pen: Pen, text: string, x: number, y: number, size: number): void {
  const { data } = encode(text, { ecc: 'M', border: 0 })
  const module = size / (data.length + 2 * QUIET)
  for (const [row, squares] of data.entries()) {
    for (let from = 0; from < squares.length; from++) {
      if (!squares[from]) continue
      let to = from
      while (squares[to]) to++
      pen.rect(x + (QUIET + from) * module, y + (QUIET + row) * module, (to - from) * module, module, {
        fill: '#000000',
      })
      from = to
    }
  }
}
