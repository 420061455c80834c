import { chopped, width } from './width.ts'

/**
 * A text in lines of at most `columns`, broken between words. The first line starts with `first`, the others with blanks as wide; a word
 * longer than a line is broken inside. Joins two words that a no-break space holds together as one.
 */
export function wrap(text: string, columns: number, first = ''): string[] {
  const indent = ' '.repeat(width(first))
  const room = Math.max(8, columns - indent.length)
  const lines: string[] = []
  let line = ''
  for (const word of text.split(/[ \n\t]+/).filter((part) => part !== '')) {
    for (const piece of width(word) > room ? chopped(word, room) : [word]) {
      if (line !== '' && width(line) + 1 + width(piece) > room) {
        lines.push(line)
        line = ''
      }
      line += line === '' ? piece : ` ${piece}`
    }
  }
  lines.push(line)
  return lines.map((one, i) => ((i === 0 ? first : indent) + one).trimEnd().replaceAll('\u00a0', ' '))
}
