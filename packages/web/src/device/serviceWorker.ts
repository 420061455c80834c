/** Keeps the page on the device from the first visit on, and tells when a newer one has come. */
import { registerSW } from 'virtual:pwa-register'

const LOOK_EVERY = 3_600_000

/** Calls with what takes the newer page when one is there; gives what stops looking. Plain HTTP in a shop's network has no service worker: then nothing is kept. */
export function lookForUpdate(ready: (take: () => void) => void): () => void {
  let timer: ReturnType<typeof setInterval> | undefined
  let registration: ServiceWorkerRegistration | undefined
  const update = registerSW({
    immediate: true,
    onNeedRefresh: () => ready(take),
    onRegisteredSW(_url, registered) {
      registration = registered
      timer = setInterval(() => void registered?.update().catch(() => {}), LOOK_EVERY)
    },
  })

  function take(): void {
    // A page that was there before any worker hears of no change of its worker, so the new one itself is watched.
    const next = registration?.waiting
    next?.addEventListener('statechange', () => {
      if (next.state === 'activated') location.reload()
    })
    void update(true)
  }

  return () => clearInterval(timer)
}
