/** Solves a small set of linear equations by elimination with the greatest pivot of the column. */
export function solved(matrix: number[][], right: number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!])
  for (let column = 0; column < rows.length; column++) {
    const below = rows.slice(column)
    const pivot = below.reduce((best, row) => (Math.abs(row[column]!) > Math.abs(best[column]!) ? row : best))
    rows.splice(rows.indexOf(pivot), 1)
    rows.splice(column, 0, pivot)
    for (const row of rows) {
      const factor = row === pivot ? 0 : row[column]! / pivot[column]!
      if (factor !== 0) for (let k = column; k < row.length; k++) row[k]! -= factor * pivot[k]!
    }
  }
  return rows.map((row, i) => row.at(-1)! / row[i]!)
}
