/** One signed request to an S3-compatible store, sent again where that can help, and its refusals in words. */
import { createHash } from 'node:crypto'
import { AwsV4Signer } from 'aws4fetch'
import { PlaceError } from './place.ts'

export type Store = {
  /** "https://host:9000", without a slash at the end. */
  origin: string
  bucket: string
  /** "" or "folder/": what every name begins with. */
  prefix: string
  region: string
  accessKey: string
  secretKey: string
}

export type Asked = {
  method: 'GET' | 'HEAD' | 'PUT' | 'DELETE'
  url: string
  headers?: Record<string, string>
  body?: Uint8Array
}

const TRIES = 3
const PATIENCE = 60_000
const FIRST_PAUSE = 150

/**
 * The headers of a request with its signature (AWS Signature Version 4) over method, address, headers and the hash of the body, so that the store refuses
 * what arrives damaged. `at`: "20130524T000000Z", now by default.
 */
export async function signed(
  { method, url, headers, body }: Asked,
  { region, accessKey, secretKey }: Pick<Store, 'region' | 'accessKey' | 'secretKey'>,
  at?: string,
): Promise<Headers> {
  const sha256 = createHash('sha256')
    .update(body ?? '')
    .digest('hex')
  const signer = new AwsV4Signer({
    method,
    url,
    headers: { ...headers, 'x-amz-content-sha256': sha256 },
    accessKeyId: accessKey,
    secretAccessKey: secretKey,
    service: 's3',
    region,
    ...(at === undefined ? {} : { datetime: at }),
  })
  return (await signer.sign()).headers
}

export type Answer = { status: number; body: Buffer }

/** An answer of 2xx, or 404 for what is not there. Throws `PlaceError`. */
export async function ask(store: Store, asked: Asked, where: string): Promise<Answer> {
  for (let tried = 1; ; tried++) {
    const answer = await send(store, asked).catch((error: Error) => error)
    if (answer instanceof Error || answer.status >= 500 || answer.status === 429) {
      if (tried < TRIES) {
        await new Promise((done) => setTimeout(done, FIRST_PAUSE * 2 ** (tried - 1)))
        continue
      }
      if (answer instanceof Error) throw new PlaceError({ code: 'no-answer', where, reason: reasonOf(answer) }, answer)
    }
    const { status, body } = answer
    if (status >= 200 && status < 300) return answer
    const reason = /<Code>([A-Za-z0-9]{1,60})<\/Code>/.exec(body.toString('utf8'))?.[1] ?? 'without a reason'
    // That the bucket is missing is no answer to whether a photograph is there.
    if (status === 404 && reason !== 'NoSuchBucket') return answer
    throw new PlaceError({ code: 'store-refuses', where, status, reason })
  }
}

async function send(store: Store, asked: Asked): Promise<Answer> {
  const response = await fetch(asked.url, {
    method: asked.method,
    headers: await signed(asked, store),
    body: (asked.body ?? null) as NonNullable<RequestInit['body']> | null,
    redirect: 'manual',
    signal: AbortSignal.timeout(PATIENCE),
  })
  return { status: response.status, body: Buffer.from(await response.arrayBuffer()) }
}

/** `fetch` says "fetch failed" and keeps the reason behind it. */
function reasonOf({ cause, message }: Error): string {
  const { code, message: inner } = (cause ?? {}) as { code?: string; message?: string }
  return code ?? inner ?? message
}
