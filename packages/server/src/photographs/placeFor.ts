/** The place of the photographs by the shop's settings. */
import { join } from 'node:path'
import { folderPlace } from './folderPlace.ts'
import { type Place, PlaceError } from './place.ts'
import { s3Place } from './s3Place.ts'
import type { Store } from './s3Request.ts'

type Env = Record<string, string | undefined>

const USUAL_REGION = 'us-east-1'

/**
 * `photographs` in the data folder, or with `GRIPBOOK_PHOTOGRAPHS_URL=s3+https://host:port/bucket/folder` a store, with `GRIPBOOK_S3_ACCESS_KEY`,
 * `GRIPBOOK_S3_SECRET_KEY` and, where the store has regions, `GRIPBOOK_S3_REGION`. Nothing is written or asked yet. Throws `PlaceError`.
 */
export function placeFor(env: Env, dataFolder: string): Place {
  const url = env.GRIPBOOK_PHOTOGRAPHS_URL?.trim()
  return url ? s3Place(storeAt(url, env)) : folderPlace(join(dataFolder, 'photographs'))
}

function storeAt(text: string, env: Env): Store {
  const url = parsed(text)
  const [bucket, ...folders] = url.pathname.split('/').filter((part) => part !== '')
  if (bucket === undefined) throw unreadable('it names no bucket')
  if (!/^[0-9a-z][0-9a-z.-]{1,61}[0-9a-z]$/.test(bucket))
    throw unreadable('a bucket has 3 to 63 small letters, digits, dots and hyphens')
  if (!folders.every((part) => /^[\w-][\w.-]*$/.test(part)))
    throw unreadable('a folder in it has letters, digits, dots, hyphens and underscores')
  return {
    origin: `${url.protocol}//${url.host}`,
    bucket,
    prefix: folders.map((part) => `${part}/`).join(''),
    region: env.GRIPBOOK_S3_REGION?.trim() || USUAL_REGION,
    accessKey: key(env, 'GRIPBOOK_S3_ACCESS_KEY'),
    secretKey: key(env, 'GRIPBOOK_S3_SECRET_KEY'),
  }
}

/** The address behind "s3+"; the reasons repeat nothing of it, since it may hold what somebody took for the place of a key. */
function parsed(text: string): URL {
  if (!/^s3\+https?:\/\//.test(text)) throw unreadable('it begins neither with s3+https:// nor with s3+http://')
  if (!URL.canParse(text.slice('s3+'.length))) throw unreadable('what follows s3+ is no address')
  const url = new URL(text.slice('s3+'.length))
  if (url.username !== '' || url.password !== '')
    throw unreadable('keys do not stand in it: set GRIPBOOK_S3_ACCESS_KEY and GRIPBOOK_S3_SECRET_KEY')
  if (url.search !== '' || url.hash !== '') throw unreadable('nothing follows the folder')
  return url
}

function key(env: Env, name: string): string {
  const value = env[name]?.trim()
  if (!value) throw new PlaceError({ code: 'no-keys', missing: name })
  return value
}

function unreadable(reason: string): PlaceError {
  return new PlaceError({ code: 'bad-address', reason })
}
