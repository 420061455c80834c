/** Rows as a table in plain text that also reads as Markdown: columns padded, figures to the right. */
export function table(head: readonly string[], rows: readonly (readonly (string | number)[])[]): string {
  const cells = [head, ...rows].map((row) => row.map(String))
  const widths = head.map((_, at) => Math.max(...cells.map((row) => row[at]!.length)))
  const line = (row: readonly string[]) =>
    `| ${row.map((cell, at) => (at === 0 ? cell.padEnd(widths[at]!) : cell.padStart(widths[at]!))).join(' | ')} |`
  const rule = `|${widths.map((width, at) => (at === 0 ? `:${'-'.repeat(width)}-` : `-${'-'.repeat(width)}:`)).join('|')}|`
  return [line(cells[0]!), rule, ...cells.slice(1).map(line)].join('\n')
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = Math.floor(sorted.length / 2)
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2
}

/** Three figures that count. */
export const short = (value: number) => (value >= 100 ? String(Math.round(value)) : value.toPrecision(3))
