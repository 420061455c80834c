/** Units: which there are, what a device lacks of one. */
import * as z from 'zod/mini'
import type { Routes } from '../app/kinds.ts'
import { entry } from './entries.ts'

export const unitRoutes: Routes = (shop) => async (app) => {
  app.get(
    '/units/:unit/entries',
    {
      config: { mayCall: 'paired' },
      schema: {
        summary: 'All entries of a unit in the order of the record',
        params: z.strictObject({ unit: z.uuid() }),
        response: { 200: z.object({ entries: z.array(entry) }) },
      },
    },
    async ({ params }) => ({ entries: await shop.store.ofUnit(params.unit) }),
  )
}
