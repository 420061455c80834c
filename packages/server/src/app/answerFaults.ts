/** What goes wrong in a request, as a problem document: a fault of the list, never the words of a library, a query or a stack. */
import type { Socket } from 'node:net'
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod'
import { DatabaseError } from '../database/faults.ts'
import { FAULTS, type FaultCode, problem, Refused } from './faults.ts'

/** Faults that the HTTP server itself finds, by its own codes. */
const BY_CODE: Record<string, FaultCode> = {
  FST_ERR_CTP_BODY_TOO_LARGE: 'too-large',
  FST_ERR_CTP_INVALID_MEDIA_TYPE: 'wrong-type',
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: 'wrong-request',
  FST_ERR_CTP_EMPTY_JSON_BODY: 'wrong-request',
  FST_ERR_CTP_INVALID_JSON_BODY: 'wrong-request',
  FST_ERR_BAD_URL: 'wrong-request',
  FST_ERR_MAX_PARAM_LENGTH: 'wrong-request',
  FST_ERR_NOT_FOUND: 'not-found',
}
const BY_STATUS: Record<number, FaultCode> = {
  400: 'wrong-request',
  404: 'not-found',
  408: 'too-slow',
  413: 'too-large',
  415: 'wrong-type',
  429: 'too-often',
  503: 'stopping',
}

/** What the system says when nobody answers at the other end. */
const NOBODY_THERE = new Set(['ECONNREFUSED', 'ECONNRESET', 'EPIPE', 'ENOENT'])
/** What PostgreSQL says when it goes, comes or is full: classes 08, 53 and 57P of its codes. */
const DATABASE_AWAY = /^(08|53|57P)/
/** What its driver says of a connection that broke, without any code. */
const CONNECTION_BROKE = /Connection terminated|not queryable|timeout exceeded when trying to connect/

function isDatabaseAway({ code, message }: { code?: string; message: string }): boolean {
  return NOBODY_THERE.has(code ?? '') || DATABASE_AWAY.test(code ?? '') || CONNECTION_BROKE.test(message)
}

/** For what is refused before there is a route: an address that cannot be read. */
export function answerBadAddress(error: FastifyError, request: FastifyRequest, reply: FastifyReply): void {
  const [code, details] = faultOf(error, request)
  answer(reply, code, details)
}

/** For what is no HTTP at all: there is no request to answer, only a connection. */
export function answerNoHttp(error: { code?: string }, socket: Socket): void {
  const code: FaultCode =
    error.code === 'HPE_HEADER_OVERFLOW'
      ? 'too-many-headers'
      : error.code === 'ERR_HTTP_REQUEST_TIMEOUT'
        ? 'too-slow'
        : 'wrong-request'
  if (error.code !== 'ECONNRESET' && socket.writable) {
    const body = JSON.stringify(problem(code))
    const head = [
      `HTTP/1.1 ${FAULTS[code].status} Refused`,
      'content-type: application/problem+json',
      `content-length: ${Buffer.byteLength(body)}`,
      'connection: close',
    ]
    socket.write(`${head.join('\r\n')}\r\n\r\n${body}`)
  }
  socket.destroy(error as Error)
}

export function answerFaults(app: FastifyInstance): void {
  app.setErrorHandler((error: FastifyError, request, reply) => {
    const [code, details] = faultOf(error, request)
    if (code === 'failed' || code === 'no-database') request.log.error({ err: error }, FAULTS[code].words)
    return answer(reply, code, details)
  })
  app.setNotFoundHandler((_, reply) => answer(reply, 'not-found'))
}

function answer(reply: FastifyReply, code: FaultCode, details: Record<string, unknown> = {}): FastifyReply {
  return reply
    .status(FAULTS[code].status)
    .type('application/problem+json')
    .serializer((document: unknown) => JSON.stringify(document))
    .send(problem(code, details))
}

function faultOf(error: FastifyError, request: FastifyRequest): [FaultCode, Record<string, unknown>] {
  if (error instanceof Refused) return [error.code, { ...error.details }]
  if (hasZodFastifySchemaValidationErrors(error)) {
    const [first] = error.validation
    return ['wrong-request', { at: `${error.validationContext}${first?.instancePath ?? ''}`, why: first?.message }]
  }
  if (error instanceof DatabaseError)
    return error.fault.code === 'unknown-position' ? ['unknown-position', {}] : ['no-database', {}]
  if (isDatabaseAway(error)) return ['no-database', {}]
  const code = BY_CODE[error.code] ?? (error.statusCode === undefined ? undefined : BY_STATUS[error.statusCode])
  return code === undefined ? ['failed', { number: request.id }] : [code, {}]
}
