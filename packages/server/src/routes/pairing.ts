/** Codes that the owner makes, and the devices that are paired with them. */
import { renderSVG } from 'uqr'
import * as z from 'zod/mini'
import type { Routes } from '../app/kinds.ts'
import { MOST_BEFORE } from '../entrance/before.ts'
import { sessionCookie } from '../entrance/cookie.ts'
import { MOST_DAYS } from '../entrance/sessions.ts'
import { device, person, role, sha256Hex, shownName, uuid } from '../entrance/shapes.ts'

/** Of one address. A person who mistypes needs a few. */
const TRIES_PER_MINUTE = 10
const DAY_SECONDS = 86_400
const LOOPBACK = /^(localhost|127\.[\d.]+|\[::1\])(:\d+)?$/i

export const pairingRoutes: Routes = (shop) => async (app) => {
  app.post(
    '/pairing',
    {
      config: { mayCall: 'anyone', rateLimit: { max: TRIES_PER_MINUTE, timeWindow: 60_000 } },
      schema: {
        summary:
          'Pair a device with a code, used once; `name` is the person’s, with the owner code; `before` ids under which the device wrote before. Sets the session’s cookie',
        body: z.strictObject({
          code: z.string().check(z.maxLength(100)),
          device: z.strictObject({
            id: uuid,
            secret: sha256Hex,
            name: shownName,
          }),
          name: z.optional(shownName),
          before: z.optional(z.array(uuid).check(z.maxLength(MOST_BEFORE))),
        }),
        response: { 201: z.object({ person, device, expires: z.string() }) },
      },
    },
    async ({ body, session: replaced }, reply) => {
      const { token, session } = await shop.entrance.pair(body.code, body.device, {
        ...(body.name === undefined ? {} : { name: body.name }),
        ...(replaced === null ? {} : { replaces: replaced.id }),
        ...(body.before === undefined ? {} : { before: body.before }),
      })
      reply.header('set-cookie', sessionCookie(token, MOST_DAYS * DAY_SECONDS, shop.secure))
      return reply.status(201).send({ person: session.person, device: session.device, expires: session.expires })
    },
  )

  app.post(
    '/codes',
    {
      config: { mayCall: ['owner'] },
      schema: {
        summary: 'A code for someone new, or for a further device of a person; lives ten minutes, used once',
        body: z.union([z.strictObject({ name: shownName, role }), z.strictObject({ person: uuid })]),
        response: { 201: z.object({ code: z.string(), expires: z.string(), link: z.string(), qr: z.string() }) },
      },
    },
    async ({ body, session, protocol, host }, reply) => {
      const { code, expires } = await shop.entrance.makeCode(session!, body)
      // The gate has held the host against the names that this server has. An owner at the server itself calls it by a name that is of no use elsewhere.
      const here = LOOPBACK.test(host) ? shop.address : undefined
      // What stands after # is never sent to a server, so no log holds it.
      const link = `${here ?? `${protocol}://${host}`}/#pair=${code}`
      return reply.status(201).send({ code, expires, link, qr: renderSVG(link, { ecc: 'M', border: 4 }) })
    },
  )
}
