/** Rows of a square matrix, each with what stands on the right behind it: afterwards the unknowns stand there. In place; the diagonal may not vanish on the way. */
export function gaussJordan(rows: number[][]): void {
  rows.forEach((row, p) => {
    const by = row[p]!
    for (let c = 0; c < row.length; c++) row[c]! /= by
    rows.forEach((other, q) => {
      const factor = other[p]!
      if (q !== p) for (let c = 0; c < row.length; c++) other[c]! -= factor * row[c]!
    })
  })
}
