/** Series of the unified inch thread. */
export type UnifiedSeries = 'UNC' | 'UNF' | 'UNEF'

/**
 * Sizes as they are written, with the threads per inch of each series (null where the series has none). A size with # is a number
 * size: D = 0.060 in + 0.013 in for each number.
 * @source ASME B1.1, coarse, fine and extra-fine series, #0 to 1 1/2 (from memory; 1/4 to 1/2 also in Shigley 9e, Table 8-2)
 */
export const UNIFIED_SIZES: readonly (readonly [string, number | null, number | null, number | null])[] = [
  ['#0', null, 80, null],
  ['#1', 64, 72, null],
  ['#2', 56, 64, null],
  ['#3', 48, 56, null],
  ['#4', 40, 48, null],
  ['#5', 40, 44, null],
  ['#6', 32, 40, null],
  ['#8', 32, 36, null],
  ['#10', 24, 32, null],
  ['#12', 24, 28, 32],
  ['1/4', 20, 28, 32],
  ['5/16', 18, 24, 32],
  ['3/8', 16, 24, 32],
  ['7/16', 14, 20, 28],
  ['1/2', 13, 20, 28],
  ['9/16', 12, 18, 24],
  ['5/8', 11, 18, 24],
  ['3/4', 10, 16, 20],
  ['7/8', 9, 14, 20],
  ['1', 8, 12, 20],
  ['1 1/8', 7, 12, 18],
  ['1 1/4', 7, 12, 18],
  ['1 3/8', 6, 12, 18],
  ['1 1/2', 6, 12, 18],
]

/** Diameter in inches of a size as written: "#10" is 0.19, "1 1/8" is 1.125. */
export function inchesOf(size: string): number {
  if (size.startsWith('#')) return (60 + 13 * Number(size.slice(1))) / 1000
  let inches = 0
  for (const part of size.split(' ')) {
    const [over, under = '1'] = part.split('/')
    inches += Number(over) / Number(under)
  }
  return inches
}
