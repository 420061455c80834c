import { useEffect, useState } from 'preact/hooks'

export type Awake = 'held' | 'asking' | 'cannot'

/** Keeps the screen on while the page is looked at. 'cannot': this device, or its battery, does not let it. */
export function useWakeLock(): Awake {
  const [awake, setAwake] = useState<Awake>('asking')
  useEffect(() => {
    let lock: WakeLockSentinel | null = null
    let left = false
    async function ask() {
      if (document.visibilityState !== 'visible' || (lock !== null && !lock.released)) return
      try {
        const got = await navigator.wakeLock.request('screen')
        if (left) return void got.release()
        lock = got
        setAwake('held')
      } catch {
        if (!left) setAwake('cannot')
      }
    }
    void ask()
    // The browser lets go of it when another page is looked at.
    document.addEventListener('visibilitychange', ask)
    return () => {
      left = true
      document.removeEventListener('visibilitychange', ask)
      void lock?.release()
    }
  }, [])
  return awake
}
