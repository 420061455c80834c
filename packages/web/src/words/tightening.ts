/** The sentences of the tightening, apart from the others: they are fetched with its page. */
import { tightening as en } from './en/tightening.ts'
import { language } from './index.ts'

const LANGUAGES: Readonly<Record<string, typeof en>> = { en }

export const words = LANGUAGES[language]!
