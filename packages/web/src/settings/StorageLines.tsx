/** How much of the browser's storage is taken, and whether the browser may clear it by itself. */
import type { Status } from '@gripbook/device'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { faultWords } from '../app/faultWords.ts'
import { words } from '../words/index.ts'
import { bytesWords } from './figures.ts'
import './StorageLines.css'

export function StorageLines({ storage: { used, quota, persistent } }: { storage: Status['storage'] }) {
  const { book, say } = useApp()
  const [asked, setAsked] = useState(false)

  async function keep() {
    try {
      const kept = await book.device.keepForGood()
      setAsked(true)
      if (kept) say({ words: words.sending.kept, tone: 'done' })
    } catch (error) {
      say({ words: faultWords(error), tone: 'fault' })
    }
  }

  return (
    <div class="stack stack--tight">
      <p>
        {used === null || quota === null
          ? words.sending.usedUnknown
          : words.sending.used(bytesWords(used), bytesWords(quota))}
      </p>
      {used !== null && quota !== null && (
        <progress class="storage" max={quota} value={used} aria-label={words.sending.storage} />
      )}
      <p>{persistenceWords(persistent)}</p>
      {persistent === false && (
        <button type="button" class="button" onClick={() => void keep()}>
          {words.sending.keepForGood}
        </button>
      )}
      <p role="status">{asked && persistent === false ? words.sending.notKept : ''}</p>
    </div>
  )
}

function persistenceWords(persistent: boolean | null): string {
  if (persistent === null) return words.sending.persistentUnknown
  return persistent ? words.sending.persistent : words.sending.notPersistent
}
