/** Figures about the server, for the owner, or for a program on the same machine that collects them. */
import { Refused } from '../app/faults.ts'
import type { Routes } from '../app/kinds.ts'
import { isLoopback } from '../app/loopback.ts'

export const metricRoutes: Routes = () => async (app) => {
  const schema = {
    summary: 'Figures about the server in the OpenMetrics text format',
    produces: ['text/plain'],
  } as object
  app.get('/metrics', { config: { mayCall: 'anyone' }, schema }, async (request, reply) => {
    if (!isLoopback(request.ip) && request.session?.person.role !== 'owner') throw new Refused('not-allowed')
    const { registry } = app.figures
    return reply.type(registry.contentType).send(await registry.metrics())
  })
}
