/** The page at the bench: its built files, and its one document for every address that a person may open or come back to. */
import fastifyStatic from '@fastify/static'
import type { FastifyPluginAsync } from 'fastify'
import { Refused } from '../app/faults.ts'

const DOCUMENT = 'index.html'
/** What the build writes: no part begins with a dot, so no path leads out of the folder or to what is hidden in it. */
const A_FILE = /^[\w-][\w.-]*(?:\/[\w-][\w.-]*)*$/
/** The build puts a hash of what is in it into the name, so what is called so never changes. */
const HASHED = /^assets\/.+-[\w-]{8}\.\w+$/
const UNDER_API = /^api(?:\/|$)/
const YEAR = 31_536_000_000

/** `folder`: where the built page lies, absolute. Looked into for each request, so a page that is built anew is served at once. */
export const pageRoutes =
  (folder: string): FastifyPluginAsync =>
  async (app) => {
    await app.register(fastifyStatic, {
      root: folder,
      serve: false,
      preCompressed: true,
      index: false,
      cacheControl: false,
      dotfiles: 'deny',
    })
    app.get<{ Params: { '*': string } }>(
      '/*',
      { config: { mayCall: 'anyone' }, schema: { hide: true } as object },
      ({ params, headers }, reply) => {
        const path = params['*']
        if (UNDER_API.test(path)) throw new Refused('not-found')
        const file = path === '' || isPlace(path, headers.accept) ? DOCUMENT : path
        if (!A_FILE.test(file)) throw new Refused('not-found')
        if (HASHED.test(file)) return reply.sendFile(file, { cacheControl: true, maxAge: YEAR, immutable: true })
        return reply.header('cache-control', 'no-cache').sendFile(file)
      },
    )
  }

/** Whether a browser asks for a place within the page ("unit/…/face/pan"), not for a file of it. */
function isPlace(path: string, accept = ''): boolean {
  return accept.includes('text/html') && !path.slice(path.lastIndexOf('/') + 1).includes('.')
}
