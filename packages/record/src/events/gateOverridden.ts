import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { note, where } from './parts.ts'
import { atWords, becauseWords } from './words.ts'

/** A person goes on where Gripbook says stop, and says why. */
export const gateOverridden = defineEvent({
  type: 'gate-overridden',
  body: z.strictObject({
    gate: z.enum([
      'hand-start',
      'pass before',
      'closing step',
      'resistance',
      'torque out of band',
      'bolt does not belong',
      'calibration',
      'release',
    ]),
    ...where,
    reason: note,
  }),
  writes: () => [],
  say: ({ gate, reason, face, hole }) => `Stop overridden (${gate})${atWords({ face, hole })}${becauseWords(reason)}`,
})
