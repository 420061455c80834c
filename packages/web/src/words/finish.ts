/** The sentences of finishing a unit, apart from the others: they are fetched with its pages. */
import { finish as en } from './en/finish.ts'
import { language } from './index.ts'

const LANGUAGES: Readonly<Record<string, typeof en>> = { en }

export const words = LANGUAGES[language]!
