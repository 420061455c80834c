export type Paint = 'bold' | 'green' | 'yellow' | 'red'

const CODES: Record<Paint, number> = { bold: 1, green: 32, yellow: 33, red: 31 }

/** Colour is only ever an addition to a word and a sign, and is left out where the terminal or its user does not want it. */
export function painter(colour: boolean): (text: string, paint: Paint) => string {
  return (text, paint) => (colour && text !== '' ? `\u001b[${CODES[paint]}m${text}\u001b[0m` : text)
}
