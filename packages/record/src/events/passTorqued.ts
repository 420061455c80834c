import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import type { Json } from './json.ts'
import { atHole, maybe, tool, torque, whole } from './parts.ts'
import { holePlace, STEP } from './places.ts'
import { quantityWords } from './words.ts'

/** One bolt tightened in one pass. Without a torque it is by feel, and the tool says so. */
export const passTorqued = defineEvent({
  type: 'pass-torqued',
  body: z.strictObject({
    ...atHole,
    /** 1, 2, 3 … */
    pass: whole(1, 100),
    /** It reaches the full torque. */
    final: z.boolean(),
    torque: maybe(torque),
    /** What the manual or the plan asked for in this pass. */
    wanted: maybe(torque),
    angle: maybe(z.number().check(z.gte(0), z.lte(100_000))),
    tool: maybe(tool),
  }),
  writes: ({ face, hole, pass, final, torque: reached, angle }) => {
    const value = {
      ...(reached === undefined ? {} : { torque: reached }),
      ...(angle === undefined ? {} : { angle }),
    } as Json
    const at = holePlace(face, hole)
    return [{ at, field: `${STEP}pass ${pass}`, value }, ...(final ? [{ at, field: `${STEP}final`, value }] : [])]
  },
  say: ({ face, hole, pass, final, torque: reached, angle, tool: by }) =>
    `Hole ${hole} of ${face}, ${final ? 'final pass' : `pass ${pass}`}: ${reached === undefined ? 'by feel' : quantityWords(reached, 'torque')}${angle === undefined ? '' : ` and ${angle}°`}${by === undefined ? '' : `, ${by.name}`}`,
})
