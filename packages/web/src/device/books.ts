/** The two records on a device: the shop's, and the practice one, which is never sent. */
import { type Device, openDevice } from '@gripbook/device'
import type { BookName } from '../app/route.ts'

const opened = new Map<BookName, Promise<Device>>()

/** Opens a record once; one that failed to open is tried again when it is asked for again. Errors: those of `openDevice`. */
export function openBook(name: BookName): Promise<Device> {
  const known = opened.get(name)
  if (known) return known
  const opening = name === 'shop' ? openDevice({ label: deviceLabel() }) : openPractice()
  opened.set(name, opening)
  opening.catch(() => opened.delete(name))
  return opening
}

function openPractice(): Promise<Device> {
  return openDevice({
    name: 'gripbook-practice',
    label: 'practice',
    fetch: () => Promise.reject(new TypeError('what is practised is never sent')),
    patience: { firstPause: 3_600_000, longestPause: 3_600_000, idle: 3_600_000, poll: 3_600_000 },
  })
}

/** What the owner reads in the list of devices. */
export function deviceLabel(): string {
  const agent = navigator.userAgent
  const kind = /iPad|Tablet/.test(agent) ? 'Tablet' : /Mobi|Android|iPhone/.test(agent) ? 'Phone' : 'Computer'
  return kind
}
