/** The types that routes are written with, and what a route says about itself. */
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod'
import type { Role, Session } from '../entrance/entrance.ts'
import type { Shop } from './shop.ts'

/** Who may call a route. Every route says so in its `config`; one that does not stops the server from being built. */
export type MayCall = 'anyone' | 'paired' | readonly Role[]

/** The routes of one resource: a function of the shop, registered under /api. */
export type Routes = (shop: Shop) => FastifyPluginAsyncZod

declare module 'fastify' {
  interface FastifyContextConfig {
    mayCall?: MayCall
  }
  interface FastifyRequest {
    /** Who is signed in; null only on routes that anyone may call. */
    session: Session | null
  }
}
