/** What has changed on the device, told to this tab and to the others. */
import type { Place } from './place.ts'

export type News =
  /** Entries of these units are new, or their state has changed. */
  | { of: 'units'; units: readonly string[] }
  | { of: 'photographs' }
  /** Paired or signed out. */
  | { of: 'session' }

export type NewsDesk = {
  /** Tells this tab's listeners at once, other tabs' a moment later. */
  tell(news: News): void
  listen(listener: (news: News, here: boolean) => void): () => void
  close(): void
}

export function newsDesk(place: Pick<Place, 'name' | 'channel'>): NewsDesk {
  const listeners = new Set<(news: News, here: boolean) => void>()
  const channel = place.channel(`gripbook:${place.name}`)
  const spread = (news: News, here: boolean) => {
    for (const listener of [...listeners]) listener(news, here)
  }
  if (channel !== null) channel.onmessage = ({ data }: MessageEvent) => spread(data as News, false)
  return {
    tell(news) {
      spread(news, true)
      channel?.postMessage(news)
    },
    listen(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    close() {
      listeners.clear()
      channel?.close()
    },
  }
}
