import { must } from '@gripbook/engine'

/** Where a device works: everything that it takes from around it, handed in so that a test can hand in its own. */
export type Place = {
  /** Of the database; two names on one address are two devices. */
  name: string
  /** What the owner reads in the list of devices. */
  label: string
  /** Where the shop's resources lie: `/api`. */
  base: string
  fetch: (url: string, init?: RequestInit) => Promise<Response>
  /** Milliseconds since 1970. */
  clock: () => number
  newId: () => string
  random: (bytes: number) => Uint8Array
  /** One sender of all tabs; null where the page may not have it (plain HTTP in the shop's network). */
  locks: Pick<LockManager, 'request'> | null
  /** The device's room among the tabs; null in a browser without. */
  channel: (name: string) => Pick<BroadcastChannel, 'postMessage' | 'onmessage' | 'close'> | null
  /** Null where the page may not ask (plain HTTP). */
  storage: Pick<StorageManager, 'estimate' | 'persisted' | 'persist'> | null
  /** The browser goes on writing to the log of a database that was not closed (`freshLog.ts`). */
  reusesLog: boolean
  /** Where a mark outlives the database; null in a browser that does not let the page have it. */
  marks: Pick<Storage, 'getItem' | 'setItem'> | null
  /** Calls when the network came back; gives what stops it. */
  onBack: (listener: () => void) => () => void
  /** Calls with whether the page is looked at, when that changes; gives what stops it. */
  onSeen: (listener: (seen: boolean) => void) => () => void
  patience: Patience
  /** Bytes of photographs that the shop has already and that stay on the device as long as there is room. */
  cacheBytes: number
}

/** All in milliseconds. */
export type Patience = {
  /** For one answer of the shop. */
  answer: number
  /** For a turn at sending, before whether the tab that has it is awake is looked at. */
  turn: number
  firstPause: number
  longestPause: number
  /** Without anything to send the shop is asked how it is once in so long: the shop may have been set back to an older state. */
  idle: number
  /** A live stream in which nothing came for so long is dead (the shop's beat is 15 s). */
  silence: number
  /** Between two questions where no live stream comes through. */
  poll: number
}

const PATIENCE: Patience = {
  answer: 30_000,
  turn: 20_000,
  firstPause: 1_000,
  longestPause: 60_000,
  idle: 300_000,
  silence: 45_000,
  poll: 10_000,
}

export type Given = Partial<Omit<Place, 'patience'>> & { patience?: Partial<Patience> }

/** The place that a browser's page is, but for what is given. */
export function inBrowser(given: Given = {}): Place {
  const random = given.random ?? ((bytes) => crypto.getRandomValues(new Uint8Array(bytes)))
  return {
    name: 'gripbook',
    label: 'phone or tablet',
    base: '/api',
    fetch: (url, init) => fetch(url, init),
    clock: () => Date.now(),
    newId: () => uuidOf(random(16)),
    locks: typeof navigator.locks === 'object' ? navigator.locks : null,
    channel: (name) => (typeof BroadcastChannel === 'function' ? new BroadcastChannel(name) : null),
    storage: typeof navigator.storage === 'object' ? navigator.storage : null,
    reusesLog: /Chrom(e|ium)\//.test(navigator.userAgent),
    marks: marksHere(),
    onBack: whenBack,
    onSeen: whenSeen,
    cacheBytes: 200_000_000,
    ...given,
    random,
    patience: { ...PATIENCE, ...given.patience },
  }
}

/** A UUID of version 4 from 16 random bytes; `crypto.randomUUID` is not there on plain HTTP. */
export function uuidOf(bytes: Uint8Array): string {
  must(bytes.length >= 16, 'uuidOf: too few random bytes for an id that is the only one', bytes.length)
  const set = bytes.slice(0, 16)
  set[6] = (set[6]! & 0x0f) | 0x40
  set[8] = (set[8]! & 0x3f) | 0x80
  return hexOf(set).replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5')
}

export function hexOf(bytes: Uint8Array): string {
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')
}

/** A browser that was told to keep nothing throws when it is asked. */
function marksHere(): Place['marks'] {
  try {
    return window.localStorage
  } catch {
    return null
  }
}

function whenBack(listener: () => void): () => void {
  window.addEventListener('online', listener)
  return () => window.removeEventListener('online', listener)
}

function whenSeen(listener: (seen: boolean) => void): () => void {
  const tell = () => listener(document.visibilityState === 'visible')
  document.addEventListener('visibilitychange', tell)
  return () => document.removeEventListener('visibilitychange', tell)
}
