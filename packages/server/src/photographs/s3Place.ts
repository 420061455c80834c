/** Photographs in an S3-compatible store, addressed as host/bucket/name, which all of them understand. */
import { isName, mustBeName, type Place } from './place.ts'
import { type Asked, ask, type Store } from './s3Request.ts'

export function s3Place(store: Store): Place {
  const bucket = `${store.origin}/${store.bucket}`
  const where = `${bucket}/${store.prefix}`
  const on = (method: Asked['method'], name: string, more: Partial<Asked> = {}) => {
    mustBeName(name)
    return ask(store, { method, url: `${where}${name}`, ...more }, where)
  }
  return {
    where,
    async put(name, bytes) {
      await on('PUT', name, { body: bytes, headers: { 'content-type': 'image/jpeg' } })
    },
    async get(name) {
      const { status, body } = await on('GET', name)
      return status === 404 ? null : body
    },
    async has(name) {
      return (await on('HEAD', name)).status !== 404
    },
    async remove(name) {
      await on('DELETE', name)
    },
    async *list() {
      let token: string | undefined
      do {
        const query = new URLSearchParams({ 'list-type': '2' })
        if (store.prefix !== '') query.set('prefix', store.prefix)
        if (token !== undefined) query.set('continuation-token', token)
        const { body } = await ask(store, { method: 'GET', url: `${bucket}?${query}` }, where)
        const listed = body.toString('utf8')
        for (const [, key = ''] of listed.matchAll(/<Key>([^<]*)<\/Key>/g)) {
          const name = key.slice(store.prefix.length)
          if (key.startsWith(store.prefix) && isName(name)) yield name
        }
        token = unescaped(/<NextContinuationToken>([^<]+)</.exec(listed)?.[1])
      } while (token !== undefined)
    },
  }
}

const ENTITIES: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" }

function unescaped(text: string | undefined): string | undefined {
  return text
    ?.replace(/&#(x?)([0-9a-f]+);/gi, (_, hex, digits) => String.fromCodePoint(Number.parseInt(digits, hex ? 16 : 10)))
    .replace(/&(amp|lt|gt|quot|apos);/g, (_, name: string) => ENTITIES[name]!)
}
