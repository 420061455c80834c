/**
 * Everything that a request can be refused for: one list, with the status and the words of each. The answer is a problem document (RFC 9457) whose
 * `code` is the name here; docs/server.md is held against this list by a test.
 */
export const FAULTS = {
  'wrong-request': { status: 400, words: 'The request does not have the shape that is asked for.' },
  'not-signed-in': {
    status: 401,
    words: 'This device is not paired, or its session has ended. Ask the owner for a code.',
  },
  'code-not-valid': { status: 401, words: 'This code is wrong, used up or too old. Ask for a new one.' },
  'not-allowed': { status: 403, words: 'Your role does not allow this.' },
  'other-device': {
    status: 403,
    words: 'An entry is sent by the device that made it, for a person who is paired on it.',
  },
  'wrong-secret': {
    status: 403,
    words: 'This device is known to the shop, and the secret that it made then is another one.',
  },
  'wrong-origin': { status: 403, words: 'This request comes from a page of another site.' },
  'not-found': { status: 404, words: 'There is nothing here by this name.' },
  'wrong-method': { status: 405, words: 'This cannot be done here.' },
  'too-slow': { status: 408, words: 'The request took too long to arrive. Send it again.' },
  'refused-entries': { status: 409, words: 'Nothing of this batch was kept.' },
  'other-offset': { status: 409, words: 'The upload goes on elsewhere: ask how far it has come.' },
  'last-owner': { status: 409, words: 'The shop needs an owner: make someone else one first.' },
  'unknown-position': { status: 410, words: 'This record has not given that position. Read from the beginning.' },
  'too-large': { status: 413, words: 'This is more than is taken at once.' },
  'wrong-type': { status: 415, words: 'This kind of content is not taken here.' },
  'wrong-host': { status: 421, words: 'This server is not reached by that name.' },
  'bad-entry': { status: 422, words: 'An entry is not what its type says it is.' },
  'not-that-photograph': { status: 422, words: 'What arrived has another hash than the photograph it was sent as.' },
  'bad-photograph': { status: 422, words: 'This is no photograph that can be read whole: JPEG, PNG or WebP.' },
  'bad-archive': { status: 422, words: 'The archive is damaged or none. Nothing was taken in.' },
  'too-often': { status: 429, words: 'Too many requests. Wait a little.' },
  'too-many-headers': { status: 431, words: 'The header of this request is too large.' },
  failed: { status: 500, words: 'Gripbook failed. It is written in its log under this number.' },
  'damaged-photograph': {
    status: 500,
    words: 'This photograph is damaged or gone where it was kept. Put it back from a backup or an archive.',
  },
  'no-database': { status: 503, words: 'The database does not answer at the moment. Nothing is lost: send again.' },
  'no-place': {
    status: 503,
    words: 'Where photographs are kept does not answer or refuses; the log says why. Nothing is lost: send again.',
  },
  stopping: { status: 503, words: 'The server is being stopped. Send again in a moment.' },
} as const satisfies Record<string, { status: number; words: string }>

export type FaultCode = keyof typeof FAULTS

/** Thrown where a request is refused; `details` go into the answer beside code and words, so nothing secret may stand in them. */
export class Refused extends Error {
  readonly code: FaultCode
  readonly details: Readonly<Record<string, unknown>>
  constructor(code: FaultCode, details: Record<string, unknown> = {}) {
    super(FAULTS[code].words)
    this.name = 'Refused'
    this.code = code
    this.details = details
  }
}

/** The problem document of a fault. */
export function problem(code: FaultCode, details: Readonly<Record<string, unknown>> = {}): Record<string, unknown> {
  const { status, words } = FAULTS[code]
  return { ...details, status, code, title: words }
}
