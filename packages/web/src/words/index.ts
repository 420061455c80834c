/** Every sentence of the page, per language. To add one: a folder beside `en` with the same names, and a line in LANGUAGES. */
import type { Fault } from '@gripbook/engine'
import { en } from './en/index.ts'

export type Words = typeof en

/** Sentences of a part that is fetched when it is first wanted stand beside it: `tightening.ts`. */
const LANGUAGES: Readonly<Record<string, Words>> = { en }

/** Of the languages that the person's browser asks for, the first that there is. */
export const language =
  (globalThis.navigator?.languages ?? []).map((name) => name.split('-')[0]!).find((name) => name in LANGUAGES) ?? 'en'

export const words: Words = LANGUAGES[language]!

/** What is wrong with a figure, in words. */
export function sayFault<C extends Fault['code']>(fault: Extract<Fault, { code: C }>): string {
  const say = words.figureFaults[fault.code as C] as (fault: Extract<Fault, { code: C }>) => string
  return say(fault)
}

const AND = new Intl.ListFormat(language, { type: 'conjunction' })
const OR = new Intl.ListFormat(language, { type: 'disjunction' })

/** "4, 9 and 12" in the language of the page. */
export function listed(names: readonly string[], joint: 'and' | 'or' = 'and'): string {
  return (joint === 'and' ? AND : OR).format(names)
}

/** A reason of the engine as a sentence of its own. */
export function sentence(text: string): string {
  const first = text.charAt(0).toLocaleUpperCase(language)
  return `${first}${text.slice(1)}${/[.?!]$/.test(text) ? '' : '.'}`
}
