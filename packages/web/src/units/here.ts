import { language } from '../words/index.ts'
import type { Place } from './when.ts'

/** How days and hours are written: the language of the page, in the habit of the person's country where the browser names one. */
export const place: Place = {
  language: (globalThis.navigator?.languages ?? []).find((name) => name.split('-')[0] === language) ?? language,
}
