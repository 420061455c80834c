/** The form in which a unit is taken in: what was typed so far, kept so that a closed tab loses nothing, and the entries that it becomes. */
import { type Happening, openedBeforeSeen, photographed, unitTakenIn } from '@gripbook/record'
import type { KeptPhotograph } from '../parts/PhotographButtons.tsx'
import { given, lines, oneLine } from './texts.ts'

export const HISTORIES = ['never opened', 'unknown', 'opened before'] as const
export type History = (typeof HISTORIES)[number]

export type Sign = { text: string; photograph: KeptPhotograph | null }

export type Draft = {
  /** Id of the unit: made when the form was opened. */
  unit: string
  name: string
  model: string
  job: string
  complaint: string
  history: History | null
  signs: readonly Sign[]
  photographs: readonly (KeptPhotograph & { caption: string })[]
}

export function emptyDraft(unit: string): Draft {
  return { unit, name: '', model: '', job: '', complaint: '', history: null, signs: [], photographs: [] }
}

/** Whether there is anything in it that somebody would miss. */
export function holdsSomething({ unit: _, ...draft }: Draft): boolean {
  return Object.values(draft).some((value) => value !== null && value.length > 0)
}

/** A draft as it was kept; null when there is none, or it is none that this page can show. */
export function readDraft(text: string | null): Draft | null {
  try {
    const kept = JSON.parse(text ?? 'null') as Partial<Draft> | null
    if (typeof kept?.unit !== 'string') return null
    const draft = { ...emptyDraft(kept.unit), ...kept }
    const texts = [draft.name, draft.model, draft.job, draft.complaint, ...draft.signs.map((sign) => sign.text)]
    const captions = draft.photographs.map(({ photograph, caption }) => [photograph, caption])
    return [...texts, ...captions.flat()].every((value) => typeof value === 'string') ? draft : null
  } catch {
    return null
  }
}

/** A sign without words or photograph says nothing, and is left out. */
export function takeInHappenings(draft: Draft, signInPicture: string): Happening[] {
  const { history, signs, photographs } = draft
  return [
    unitTakenIn({
      ...given('name', oneLine(draft.name)),
      ...given('model', oneLine(draft.model)),
      ...given('job', oneLine(draft.job)),
      ...given('complaint', lines(draft.complaint)),
      ...(history === null ? {} : { history }),
    }),
    ...photographs.map(({ caption, ...photograph }) =>
      photographed({ ...photograph, ...given('caption', oneLine(caption)) }),
    ),
    ...signs.flatMap(({ text, photograph }): Happening[] => {
      const words = lines(text)
      if (words === undefined && photograph === null) return []
      const sign = words ?? signInPicture
      if (photograph === null) return [openedBeforeSeen({ sign })]
      return [
        openedBeforeSeen({ sign, photograph: photograph.photograph }),
        photographed({ ...photograph, ...given('caption', oneLine(sign)?.slice(0, 300)) }),
      ]
    }),
  ]
}
