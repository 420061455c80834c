import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { id, maybe, note, uuid } from './parts.ts'
import { atWords } from './words.ts'

/** What was found to be behind a complaint, and what was done about it. `cameBack`: the entry with which the unit came back. */
export const comeBackAnswered = defineEvent({
  type: 'come-back-answered',
  body: z.strictObject({ cameBack: uuid, found: note, done: maybe(note), face: maybe(id) }),
  writes: () => [],
  say: ({ found, done, face }) =>
    `Complaint answered: found${atWords({ face })}: ${found}${done === undefined ? '' : `; done: ${done}`}`,
})
