/** Units: which there are, what they have become, what a device lacks of one. */
import * as z from 'zod/mini'
import { Refused } from '../app/faults.ts'
import type { Routes } from '../app/kinds.ts'
import { sendJson } from '../app/sendJson.ts'
import { unitStates } from '../app/unitStates.ts'
import { uuid } from '../entrance/shapes.ts'
import { recentUnits } from '../store/recentUnits.ts'
import { entry } from './entries.ts'

const MOST_UNITS = 200
const MOST_READ = 5_000
const MOST_DEVICES = 1_000

const ofUnit = z.strictObject({ unit: uuid })
const whole = (least: number, most: number) => z.number().check(z.int(), z.gte(least), z.lte(most))

const inShort = z.object({
  unit: z.string(),
  entries: z.number(),
  name: z.nullable(z.string()),
  model: z.nullable(z.string()),
  complaint: z.nullable(z.string()),
  released: z.boolean(),
  lastAt: z.string(),
})

export const unitRoutes: Routes = (shop) => async (app) => {
  const states = unitStates(shop.store)

  app.get(
    '/units',
    {
      config: { mayCall: 'paired' },
      schema: {
        summary: 'The units of the shop, the one worked on last first; `after` is the last unit of the page before',
        querystring: z.strictObject({
          after: z.optional(uuid),
          limit: z._default(z.coerce.number().check(z.int(), z.gte(1), z.lte(MOST_UNITS)), 50),
        }),
        response: { 200: z.object({ units: z.array(inShort), more: z.boolean() }) },
      },
    },
    async ({ query }) => {
      const { units, more } = await recentUnits(shop.db, query.after ?? null, query.limit)
      const shown = []
      for (const { unit, entries } of units) {
        const short = await states.inShort(unit, entries)
        if (short !== null) shown.push({ unit, entries, ...short })
      }
      return { units: shown, more }
    },
  )

  app.get(
    '/units/:unit',
    {
      config: { mayCall: 'paired' },
      schema: {
        summary: 'What a unit is by its entries: the folded state, without the entries themselves',
        params: ofUnit,
        response: { 200: z.looseObject({ id: z.string() }) },
      },
    },
    async ({ params }, reply) => {
      const state = await states.stateOf(params.unit)
      if (state === null) throw new Refused('not-found')
      const { entries: _, ...rest } = state
      return sendJson(reply, rest)
    },
  )

  app.get(
    '/units/:unit/heads',
    {
      config: { mayCall: 'paired' },
      schema: {
        summary: 'The last entry of each device about a unit: what a device compares its own with',
        params: ofUnit,
        response: {
          200: z.object({ heads: z.array(z.object({ device: z.string(), seq: z.number(), hash: z.string() })) }),
        },
      },
    },
    async ({ params }) => ({ heads: await shop.store.heads(params.unit) }),
  )

  app.post(
    '/units/:unit/missing',
    {
      config: { mayCall: 'paired' },
      schema: {
        summary:
          'Entries of a unit beyond those that the caller has, by device and number; in pieces while there are more',
        params: ofUnit,
        body: z.strictObject({
          have: z.record(uuid, whole(1, Number.MAX_SAFE_INTEGER)).check(
            z.refine((have) => Object.keys(have).length <= MOST_DEVICES, {
              error: `at most ${MOST_DEVICES} devices`,
            }),
          ),
          limit: z._default(whole(1, MOST_READ), 1_000),
        }),
        response: { 200: z.object({ entries: z.array(entry), more: z.boolean() }) },
      },
    },
    async ({ params, body }, reply) => {
      const { events, more } = await shop.store.beyond(params.unit, body.have, body.limit)
      return sendJson(reply, { entries: events, more })
    },
  )
}
