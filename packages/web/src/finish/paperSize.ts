export type PaperName = 'A4' | 'Letter'

/** Countries that print on Letter (common knowledge, no source). */
const LETTER: ReadonlySet<string> = new Set(['US', 'CA', 'MX', 'PH', 'CL', 'CO', 'VE'])

/** The paper of the person's country, as far as the browser's language names one. */
export function usualPaper(language: string): PaperName {
  const region = language.split('-').find((part) => /^[A-Z]{2}$/.test(part))
  return region !== undefined && LETTER.has(region) ? 'Letter' : 'A4'
}
