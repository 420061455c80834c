import { cleaned, graphemes } from './runs.ts'

type Measure = (text: string) => number

/** Chinese, Japanese and Korean are written without spaces: a line may end after any of their letters. */
const PARTS = /[\u2e80-\u9fff\uac00-\ud7af\uf900-\ufaff\uff00-\uff60]/

/**
 * Lines no wider than `width`. A line ends at a space; a word that is wider by itself is broken between its letters. A line break of the text
 * stays one. More than `most` lines: the last one ends in "…".
 */
export function wrapped(text: string, width: number, measure: Measure, most = Number.POSITIVE_INFINITY): string[] {
  const lines = text.split(/\r?\n/).flatMap((paragraph) => wrappedLine(cleaned(paragraph), width, measure))
  if (lines.length <= most) return lines
  const kept = lines.slice(0, most)
  const end = graphemes(kept[most - 1] ?? '')
  while (end.length > 0 && measure(`${end.join('')}…`) > width) end.pop()
  kept[most - 1] = `${end.join('')}…`
  return kept
}

function wrappedLine(text: string, width: number, measure: Measure): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ').filter((each) => each !== '')) {
    const longer = line === '' ? word : `${line} ${word}`
    if (measure(longer) <= width) {
      line = longer
      continue
    }
    if (PARTS.test(word) && line !== '') {
      const pieces = broken(`${line} ${word}`, width, measure)
      lines.push(...pieces.slice(0, -1))
      line = pieces.at(-1)!
      continue
    }
    if (line !== '') lines.push(line)
    const pieces = measure(word) <= width ? [word] : broken(word, width, measure)
    lines.push(...pieces.slice(0, -1))
    line = pieces.at(-1)!
  }
  return line === '' ? (lines.length === 0 ? [''] : lines) : [...lines, line]
}

function broken(word: string, width: number, measure: Measure): string[] {
  const pieces: string[] = []
  let piece = ''
  for (const letter of graphemes(word)) {
    if (piece !== '' && measure(piece + letter) > width) {
      pieces.push(piece.trimEnd())
      piece = letter.trimStart()
    } else piece += letter
  }
  return [...pieces, piece]
}
