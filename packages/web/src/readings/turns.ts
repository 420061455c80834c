/** Turns counted by hand. */

/** Turns from their text: "9", "9.5", "9,5", "9 1/2". Null where it is no count of turns from 0 to 1000. */
export function readTurns(text: string): number | null {
  const read = /^(\d{1,4}(?:[.,]\d+)?)(?: (\d)\/([248]))?$/.exec(text.trim())
  if (read === null) return null
  const turns = Number(read[1]!.replace(',', '.')) + (read[2] === undefined ? 0 : Number(read[2]) / Number(read[3]))
  return turns <= 1000 ? turns : null
}

/** Half a turn is what a hand may miss at the first thread (common practice, no source). */
const MISSED = 0.5

export function againstExpected(turns: number, expected: [number, number] | null): 'fewer' | 'more' | null {
  if (expected === null) return null
  if (turns < expected[0] - MISSED) return 'fewer'
  return turns > expected[1] + MISSED ? 'more' : null
}

/** Turns as a hand counts them: to a quarter. */
export function turnsText(turns: number): string {
  return String(Math.round(turns * 4) / 4)
}
