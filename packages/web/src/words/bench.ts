/** The sentences of the bench mode, apart from the others: they are fetched with its page. */
import { bench as en } from './en/bench.ts'
import { language } from './index.ts'

const LANGUAGES: Readonly<Record<string, typeof en>> = { en }

export const words = LANGUAGES[language]!
