/** Whether the browser offers to put the page among the device's programs. The offer comes once and early, so it is kept from the first moment on. */

type Offer = Event & { prompt(): Promise<unknown>; userChoice: Promise<{ outcome: 'accepted' | 'dismissed' }> }

let offer: Offer | null = null
const listeners = new Set<() => void>()

globalThis.addEventListener?.('beforeinstallprompt', (event) => {
  // Else the browser shows a bar of its own at a moment of its own.
  event.preventDefault()
  set(event as Offer)
})
globalThis.addEventListener?.('appinstalled', () => set(null))

export type Installing = 'installed' | 'offered' | 'by hand' | 'not secure' | 'not here'

/** How the page gets onto this device: 'by hand' where the browser has it in its own menu, 'not secure' over plain HTTP. */
export function installing(): Installing {
  if (matchMedia('(display-mode: standalone)').matches) return 'installed'
  if (!isSecureContext) return 'not secure'
  if (offer !== null) return 'offered'
  return isApplePhone(navigator.userAgent, navigator.maxTouchPoints) ? 'by hand' : 'not here'
}

/** iPadOS calls itself a Macintosh; no Macintosh has a touch screen. */
export function isApplePhone(agent: string, touchPoints: number): boolean {
  return /iPhone|iPad|iPod/.test(agent) || (/Macintosh/.test(agent) && touchPoints > 1)
}

export function watchInstalling(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** Asks the person in the browser's own words; an offer can be made once. */
export async function install(): Promise<void> {
  const made = offer
  if (made === null) return
  await made.prompt()
  await made.userChoice
  set(null)
}

function set(next: Offer | null): void {
  offer = next
  for (const listener of [...listeners]) listener()
}
