/** Complaints with which a released unit came back: each is answered before the next release. */
import type { BodyOf } from '../events/catalogue.ts'
import type { Done } from './standing.ts'
import type { Open } from './stop.ts'

/** Those that are to be answered and are not. */
export function openComeBacks(standing: readonly Done[]): Open[] {
  const answered = new Set(
    standing.flatMap(({ event, body }) =>
      event.type === 'come-back-answered' ? [(body as BodyOf<'come-back-answered'>).cameBack] : [],
    ),
  )
  return standing
    .filter((done) => asksForAnswer(done) && !answered.has(done.event.id))
    .map(({ event }): Open => ({ why: { code: 'come-back-not-answered', event: event.id } }))
}

/** Records from before there was an answer ask for none: what was released then stays released. */
export function asksForAnswer({ event, body }: Pick<Done, 'event' | 'body'>): boolean {
  return event.type === 'came-back' && (body as BodyOf<'came-back'>).toAnswer === true
}
