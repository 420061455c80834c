/**
 * Source text with what is not code made blank, every character keeping its place. TypeScript 7 gives no parser to call, and a house rule
 * must not stumble over a comment or a string that speaks of what it forbids.
 */
export type Blanked = {
  /** Comments are blank, strings stand. */
  code: string
  /** Comments and the insides of strings, templates and regular expressions are blank. */
  bare: string
}

/** A slash after one of these starts a regular expression, after anything else it divides. */
const BEFORE_PATTERN = /(^|[(,=:[!&|?{};+\-*%<>~^]|=>|\b(return|typeof|case|in|of|do|else))\s*$/

export function blank(text: string): Blanked {
  const code = text.split('')
  const bare = text.split('')
  const wipe = (into: string[], from: number, to: number) => {
    for (let i = from; i < to; i++) if (text[i] !== '\n') into[i] = ' '
  }
  /** How many braces are open inside each `${` that is open. */
  const holes: number[] = []
  let at = 0
  const template = (from: number) => {
    const end = endOfTemplate(text, from)
    wipe(bare, from, end.at)
    if (end.hole) holes.push(0)
    at = end.at + (end.hole ? 2 : 1)
  }
  while (at < text.length) {
    const here = text[at]
    const two = text.slice(at, at + 2)
    if (two === '//' || two === '/*') {
      const end = endOfComment(text, at, two)
      wipe(code, at, end)
      wipe(bare, at, end)
      at = end
    } else if (here === "'" || here === '"') {
      const end = endOfQuoted(text, at + 1, here)
      wipe(bare, at + 1, end)
      at = end + 1
    } else if (here === '`') {
      template(at + 1)
    } else if (here === '/' && BEFORE_PATTERN.test(bare.slice(Math.max(0, at - 40), at).join(''))) {
      const end = endOfPattern(text, at + 1)
      wipe(bare, at + 1, end)
      at = end + 1
    } else if (here === '}' && holes.at(-1) === 0) {
      holes.pop()
      template(at + 1)
    } else {
      const open = holes.length - 1
      if (open >= 0 && here === '{') holes[open] = (holes[open] ?? 0) + 1
      if (open >= 0 && here === '}') holes[open] = (holes[open] ?? 0) - 1
      at++
    }
  }
  return { code: code.join(''), bare: bare.join('') }
}

function endOfComment(text: string, from: number, opened: '//' | '/*'): number {
  const end = opened === '//' ? text.indexOf('\n', from) : text.indexOf('*/', from + 2) + 2
  return end < from + 2 ? text.length : end
}

/** Index of the closing quote. */
function endOfQuoted(text: string, from: number, quote: string): number {
  let at = from
  while (at < text.length && text[at] !== quote && text[at] !== '\n') at += text[at] === '\\' ? 2 : 1
  return at
}

/** Index of the closing slash; one inside brackets does not close. */
function endOfPattern(text: string, from: number): number {
  let at = from
  let inClass = false
  while (at < text.length && text[at] !== '\n' && (inClass || text[at] !== '/')) {
    if (text[at] === '[') inClass = true
    if (text[at] === ']') inClass = false
    at += text[at] === '\\' ? 2 : 1
  }
  return at
}

/** Where the text of a template ends: at its backtick, or at the next `${`. */
function endOfTemplate(text: string, from: number): { at: number; hole: boolean } {
  let at = from
  while (at < text.length && text[at] !== '`') {
    if (text.startsWith('${', at)) return { at, hole: true }
    at += text[at] === '\\' ? 2 : 1
  }
  return { at, hole: false }
}
