import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, trialField } from './parts.ts'
import { quantityWords } from './words.ts'

/** A bolt dropped or turned into a hole by hand: how far it went. */
export const boltTried = defineEvent({
  type: 'bolt-tried',
  body: z.strictObject({ face: id, trial: trialField }),
  writes: () => [],
  say: ({ face, trial }) =>
    `Kind ${trial.kind} tried in hole ${trial.hole} of ${face}: ${'turns' in trial ? `${trial.turns} turns` : 'stickOut' in trial ? `stick-out ${quantityWords(trial.stickOut)}` : `head proud by ${quantityWords(trial.proud)}`}`,
})
