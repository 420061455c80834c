/** The people of the shop, for its owner. */
import * as z from 'zod/mini'
import type { Routes } from '../app/kinds.ts'
import { person, role, shownName, uuid } from '../entrance/shapes.ts'

export const peopleRoutes: Routes = (shop) => async (app) => {
  app.get(
    '/people',
    {
      config: { mayCall: 'paired' },
      schema: {
        summary: 'Everyone who ever belonged to the shop: who is meant by the ids that entries hold',
        response: { 200: z.object({ people: z.array(person) }) },
      },
    },
    async () => ({ people: await shop.entrance.people() }),
  )

  app.patch(
    '/people/:person',
    {
      config: { mayCall: ['owner'] },
      schema: {
        summary: 'Change a person’s name or role, or say that the person has left (or is back); acts at once',
        params: z.strictObject({ person: uuid }),
        body: z.strictObject({ name: z.optional(shownName), role: z.optional(role), left: z.optional(z.boolean()) }),
        response: { 200: person },
      },
    },
    ({ params, body, session }) => {
      const { name, role, left } = body
      const change = {
        ...(name === undefined ? {} : { name }),
        ...(role === undefined ? {} : { role }),
        ...(left === undefined ? {} : { left }),
      }
      return shop.entrance.changePerson(session!, params.person, change)
    },
  )
}
