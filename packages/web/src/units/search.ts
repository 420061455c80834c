/** Finding a unit by any word of what is known of it, however it was typed. */

/** Letters that no accent makes: they do not come apart by themselves. */
const ALIKE: Readonly<Record<string, string>> = { ø: 'o', ł: 'l', đ: 'd', ð: 'd', æ: 'ae', œ: 'oe', ı: 'i', þ: 'th' }

/**
 * Text as it is compared: without case, accents, vowel signs and stretching, digits of any script as 0 to 9, hiragana as katakana, wide and
 * narrow forms as one.
 */
export function plainText(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/[\p{M}\u0640]/gu, '')
    .toUpperCase()
    .toLowerCase()
    .replace(/[øłđðæœıþ]/g, (letter) => ALIKE[letter]!)
    .replace(/\p{Nd}/gu, (digit) => String(digitOf(digit)))
    .replace(/[\u3041-\u3096]/g, (kana) => String.fromCharCode(kana.charCodeAt(0) + 0x60))
}

/** Whether every word of the query stands somewhere in the texts. An empty query finds everything. */
export function finds(query: string, texts: readonly (string | null)[]): boolean {
  const wanted = plainText(query).split(/\s+/).filter(Boolean)
  if (wanted.length === 0) return true
  const here = plainText(texts.filter((text) => text !== null).join('\n'))
  return wanted.every((word) => here.includes(word))
}

/** Every script's digits stand in a row of ten, 0 first. */
function digitOf(digit: string): number {
  const code = digit.codePointAt(0)!
  if (code < 0x80) return code - 0x30
  let zero = code
  while (code - zero < 9 && /\p{Nd}/u.test(String.fromCodePoint(zero - 1))) zero--
  return code - zero
}
