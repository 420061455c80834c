import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe } from './parts.ts'

/** A person signs a step, as builder or as checker. */
export const stepSigned = defineEvent({
  type: 'step-signed',
  body: z.strictObject({ step: id, as: z.enum(['builder', 'checker']), face: maybe(id) }),
  writes: () => [],
  say: ({ step, as, face }) => `Signed as ${as}: ${step}${face === undefined ? '' : ` at ${face}`}`,
})
