import { useEffect, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'

export type Shown = { state: 'none' } | { state: 'fetching' } | { state: 'here'; url: string } | { state: 'away' }

/**
 * An address under which a photograph of the record can be shown: from this device, else from the shop in the size asked for; 'away' when it
 * is with neither at this moment. The address is given back when the photograph is no longer looked at.
 */
export function usePhotograph(sha256: string | undefined, size: 320 | 1280 | 'full' = 1280): Shown {
  const { book } = useApp()
  const [shown, setShown] = useState<Shown>({ state: 'none' })
  useEffect(() => {
    if (sha256 === undefined) {
      setShown({ state: 'none' })
      return
    }
    let url: string | null = null
    let left = false
    const show = (bytes: Blob) => {
      if (left) return
      url = URL.createObjectURL(bytes)
      setShown({ state: 'here', url })
    }
    setShown({ state: 'fetching' })
    fetchOne().catch(() => left || setShown({ state: 'away' }))
    async function fetchOne() {
      const here = await book.device.photographOf(sha256!)
      if (here !== null) return show(new Blob([here]))
      if (book.name !== 'shop') throw new Error('a photograph of the practice record is nowhere else')
      const answer = await fetch(`/api/photographs/${sha256}?size=${size}`)
      if (!answer.ok) throw new Error(`the shop answered ${answer.status}`)
      show(await answer.blob())
    }
    return () => {
      left = true
      if (url !== null) URL.revokeObjectURL(url)
    }
  }, [book.device, book.name, sha256, size])
  return shown
}
