/** The order of work in the unit file: jobs, and the tools of the bench that they are done with. */
import type { JobNeed } from '@gripbook/engine'
import * as z from 'zod/mini'
import { above0, from0, idText, isObject, maybe, note, oneOf, type Schema, shortText, toolNames } from './fields.ts'
import { LIMITS } from './limits.ts'

const ids = z.array(idText).check(z.maxLength(LIMITS.jobs))
const minutes = from0(LIMITS.minutes)

const statedNeed = z.strictObject({
  name: shortText.check(z.describe('What must be ready')),
  what: maybe(z.enum(['part', 'tool', 'reading', 'signature']), 'What it is'),
  ready: maybe(z.boolean(), 'Whether it is ready; absent: nobody has said'),
})
const need = oneOf<JobNeed>(
  'need',
  [shortText, statedNeed],
  (given) => (typeof given === 'string' ? shortText : isObject(given) ? statedNeed : undefined),
  { id: 'need', title: 'What must be ready, by name, or with what it is and whether it is ready' },
)

const stage = z.strictObject({
  stage: maybe(z.enum(['running down', 'final']), 'Stage of tightening'),
  any: toolNames.check(z.describe('Tools that reach it, any one of them')),
})

const jobWindow = z.strictObject({
  what: maybe(shortText, 'What runs: sealant open, plates soaking, a part warm'),
  minutes: maybe(above0(LIMITS.minutes), 'Minutes within which the jobs of `until` are done'),
  least: maybe(minutes, 'Least minutes before the jobs of `until` begin'),
  until: ids.check(z.minLength(1)),
})

/** All fields of a job but its id and whether it is done: those that a plan states. */
export const jobFields = {
  name: maybe(shortText, 'The job in words'),
  face: maybe(idText, 'Face that it is work on'),
  after: maybe(ids, 'Jobs that must be done before'),
  buries: maybe(ids, 'Jobs, parts or faces that can no longer be reached once it is done'),
  needs: maybe(
    z.array(need).check(z.maxLength(LIMITS.jobs)),
    'Parts, tools, readings and signatures that must be ready',
  ),
  tools: maybe(z.array(stage).check(z.maxLength(LIMITS.words)), 'What is in the hand, one stage after the other'),
  side: maybe(shortText, 'How the unit must lie: "pan up"'),
  minutes: maybe(minutes, 'How long it takes'),
  spread: maybe(minutes, 'Standard deviation of the minutes'),
  minutesBefore: maybe(
    z.array(above0(LIMITS.minutes)).check(z.maxLength(LIMITS.jobs)),
    'Minutes that it took in units before',
  ),
  window: maybe(jobWindow, 'What runs from the end of this job: sealant, warmth, soaking'),
  who: maybe(shortText, 'Who does it'),
  skip: maybe(z.boolean(), 'Left out of the order'),
  note: maybe(note, 'Free text'),
}
const { skip, note: free, ...stated } = jobFields

export const job = z.strictObject({
  id: idText.check(z.describe('Name of the job, once in the unit; one that Gripbook knows of itself is changed')),
  ...stated,
  done: maybe(z.literal(true) as Schema<true>, 'true when it is done'),
  skip,
  note: free,
})

export const benchTool = z.strictObject({
  id: idText.check(z.describe('Name of the tool, once in the unit')),
  name: maybe(shortText, 'The tool in words'),
  form: z.enum([
    'torque wrench',
    'straight extension',
    'swivel',
    'crow-foot',
    'ratchet wrench',
    'impact driver',
    'by hand',
  ]),
  lever: maybe(above0(LIMITS.length), 'From the middle of the hand to the square, mm'),
  reach: maybe(above0(LIMITS.length), 'From the square to the middle of the bolt, mm'),
  angle: maybe(from0(180), 'Angle of the crow-foot to the wrench, 0 in line, or of the swivel, degrees'),
})
