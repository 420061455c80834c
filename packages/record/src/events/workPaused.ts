import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { maybe, shortText, where } from './parts.ts'
import { atWords } from './words.ts'

/** Where the work was left, to go on from on any device. */
export const workPaused = defineEvent({
  type: 'work-paused',
  body: z.strictObject({ ...where, step: maybe(shortText) }),
  writes: () => [],
  say: ({ step, face, hole }) => `Paused${atWords({ face, hole })}${step === undefined ? '' : `: ${step}`}`,
})
