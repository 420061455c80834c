/** Keeps the page on the device from the first visit on, and tells when a newer one has come. */
import { registerSW } from 'virtual:pwa-register'

const LOOK_EVERY = 3_600_000

/** Calls with what takes the newer page when one is there; gives what stops looking. Plain HTTP in a shop's network has no service worker: then nothing is kept. */
export function lookForUpdate(ready: (take: () => void) => void): () => void {
  let timer: ReturnType<typeof setInterval> | undefined
  const take = registerSW({
    immediate: true,
    onNeedRefresh: () => ready(() => void take(true)),
    onRegisteredSW(_url, registration) {
      timer = setInterval(() => void registration?.update().catch(() => {}), LOOK_EVERY)
    },
  })
  return () => clearInterval(timer)
}
