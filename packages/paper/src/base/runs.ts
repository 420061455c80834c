/** Text as the fonts can draw it: cleaned, and cut where another font has to take over. */

export type Run = {
  text: string
  /** Index of the font that draws it; −1: none of them holds these letters. */
  font: number
  /** Written from right to left. */
  turned: boolean
}

const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/

/** What no font draws and no reader wants in its text: control characters, halves of a pair, marks that turn the direction of what follows. */
const UNPRINTABLE =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what has to be found
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g

export function cleaned(text: string): string {
  return text.replace(UNPRINTABLE, '').replace(/[\t\r\n\u2028\u2029]+/g, ' ')
}

/** Letters that are never parted from each other: an accent stays on its letter, an emoji whole. */
const GRAPHEMES = new Intl.Segmenter('und', { granularity: 'grapheme' })

export function graphemes(text: string): string[] {
  return [...GRAPHEMES.segment(text)].map(({ segment }) => segment)
}

/** Joiners and variation marks ask for a shape and need no glyph of their own. */
const NEEDS_NO_GLYPH = /^(?:\u200b|\u200c|\u200d|\ufe0e|\ufe0f)$/

/**
 * Cuts a text where the font or the direction changes. Each of `holds` tells whether one font has a glyph; the first that has all of a grapheme
 * draws it. A space inside a name of another script stays with it, so that the name is shaped as one; one after it does not.
 */
export function runsOf(text: string, holds: readonly ((codePoint: number) => boolean)[]): Run[] {
  const runs: Run[] = []
  const add = (run: Run) => {
    const last = runs.at(-1)
    if (last && last.font === run.font && last.turned === run.turned) last.text += run.text
    else runs.push(run)
  }
  let spaces = ''
  for (const grapheme of graphemes(text)) {
    if (grapheme === ' ' || grapheme === '\u00a0') {
      spaces += grapheme
      continue
    }
    const letters = [...grapheme]
      .filter((letter) => !NEEDS_NO_GLYPH.test(letter))
      .map((letter) => letter.codePointAt(0)!)
    const font = holds.findIndex((hold) => letters.every((letter) => hold(letter)))
    const run = { text: grapheme, font, turned: RIGHT_TO_LEFT.test(grapheme) }
    const last = runs.at(-1)
    const goesOn = last?.font === font && last.turned === run.turned
    if (spaces !== '') add(goesOn ? { ...run, text: spaces } : { text: spaces, font: 0, turned: false })
    spaces = ''
    add(run)
  }
  if (spaces !== '') add({ text: spaces, font: 0, turned: false })
  return runs
}
