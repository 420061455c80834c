import type { FastifyReply } from 'fastify'

/** Sends what is checked already, or was made here, without checking it by the route's schema once more: thousands of entries take long. */
export function sendJson(reply: FastifyReply, value: unknown): never {
  const sent: unknown = reply.type('application/json; charset=utf-8').send(JSON.stringify(value))
  // The handler's type asks for the schema's value; Fastify takes the reply itself as "answered already".
  return sent as never
}
