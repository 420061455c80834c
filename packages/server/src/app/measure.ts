/** What the server counts of itself: figures that any program which reads the OpenMetrics text format can collect. */
import type { FastifyInstance } from 'fastify'
import { Counter, collectDefaultMetrics, Histogram, Registry } from 'prom-client'

declare module 'fastify' {
  interface FastifyInstance {
    figures: { registry: Registry; entriesKept: Counter; photographsKept: Counter }
  }
}

const BUCKETS = [0.001, 0.003, 0.01, 0.03, 0.1, 0.3, 1, 3, 10]

export function measure(app: FastifyInstance): void {
  const registry = new Registry()
  collectDefaultMetrics({ register: registry })
  const seconds = new Histogram({
    name: 'gripbook_request_seconds',
    help: 'Time from a request to its answer',
    labelNames: ['method', 'route', 'status'],
    buckets: BUCKETS,
    registers: [registry],
  })
  const entriesKept = new Counter({
    name: 'gripbook_entries_kept_total',
    help: 'Entries that were new',
    registers: [registry],
  })
  const photographsKept = new Counter({
    name: 'gripbook_photographs_kept_total',
    help: 'Photographs that were new',
    registers: [registry],
  })
  app.decorate('figures', { registry, entriesKept, photographsKept })
  app.addHook('onResponse', async (request, reply) => {
    // The route's pattern, never what was asked for: a stranger must not be able to fill the list.
    const route = request.routeOptions.url ?? 'none'
    seconds.observe({ method: request.method, route, status: reply.statusCode }, reply.elapsedTime / 1_000)
  })
}
