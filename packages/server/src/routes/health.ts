/** Whether the server serves. */
import { sql } from 'kysely'
import * as z from 'zod/mini'
import type { Routes } from '../app/kinds.ts'

export const healthRoutes: Routes = (shop) => async (app) => {
  const schema = {
    summary: 'Whether the server and its database serve',
    response: { 200: z.object({ serves: z.literal(true) }) },
  }
  app.get('/health', { config: { mayCall: 'anyone' }, schema }, async () => {
    await sql`select 1`.execute(shop.db)
    return { serves: true as const }
  })
}
