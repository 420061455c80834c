/** Who is signed in where, and the end of it. */
import * as z from 'zod/mini'
import type { Routes } from '../app/kinds.ts'
import { sessionCookie } from '../entrance/cookie.ts'
import { session, uuid } from '../entrance/shapes.ts'

export const sessionRoutes: Routes = (shop) => async (app) => {
  app.get(
    '/session',
    { config: { mayCall: 'paired' }, schema: { summary: 'Who is signed in here', response: { 200: session } } },
    async (request) => request.session!,
  )

  app.delete(
    '/session',
    { config: { mayCall: 'paired' }, schema: { summary: 'Sign out; the device stays paired with what it has sent' } },
    async (request, reply) => {
      const { id, person } = request.session!
      await shop.entrance.endSession(id, person.id)
      return reply
        .status(204)
        .header('set-cookie', sessionCookie(null, 0, shop.secure))
        .send()
    },
  )

  app.get(
    '/sessions',
    {
      config: { mayCall: 'paired' },
      schema: {
        summary: 'The sessions of the person, the one used last first; for the owner those of everyone',
        response: { 200: z.object({ sessions: z.array(session) }) },
      },
    },
    async (request) => {
      const { role, id } = request.session!.person
      return { sessions: await shop.entrance.sessions(role === 'owner' ? null : id) }
    },
  )

  app.delete(
    '/sessions/:session',
    {
      config: { mayCall: 'paired' },
      schema: {
        summary: 'End a session: one’s own on another device, or as the owner anyone’s',
        params: z.strictObject({ session: uuid }),
      },
    },
    async (request, reply) => {
      const { role, id } = request.session!.person
      await shop.entrance.endSession(request.params.session, role === 'owner' ? null : id)
      return reply.status(204).send()
    },
  )
}
