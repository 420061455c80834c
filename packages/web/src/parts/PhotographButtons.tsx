import { useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { faultWords } from '../app/faultWords.ts'
import { NoPhotograph, type TakenPhotograph, takePhotograph } from '../device/takePhotograph.ts'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'

export type KeptPhotograph = { photograph: string; width: number; height: number }

type Props = {
  /** Called when the photograph is on the disk of this device. */
  onKept: (photograph: KeptPhotograph) => unknown
  act?: boolean
  /** Words in place of "Take photograph". */
  take?: string
}

/** A photograph from the camera, or one that lies on the device. It is kept before anything is said of it. */
export function PhotographButtons({ onKept, act = false, take = words.photograph.take }: Props) {
  const { book, say } = useApp()
  const camera = useRef<HTMLInputElement>(null)
  const files = useRef<HTMLInputElement>(null)
  const [busy, setBusy] = useState(false)

  async function keep(input: HTMLInputElement) {
    const file = input.files?.[0]
    // The same file may be chosen again after a fault.
    input.value = ''
    if (file === undefined) return
    setBusy(true)
    try {
      const taken: TakenPhotograph = await takePhotograph(file)
      const { photograph } = await book.device.photograph(taken.bytes)
      await onKept({ photograph, width: taken.width, height: taken.height })
    } catch (error) {
      const why = error instanceof NoPhotograph ? words.photograph.unreadable(file.name) : faultWords(error)
      say({ words: why, tone: 'fault' })
    } finally {
      setBusy(false)
    }
  }

  return (
    <div class="buttons buttons--even" aria-busy={busy}>
      <button
        type="button"
        class={`button${act ? ' button--act' : ''}`}
        disabled={busy}
        onClick={() => camera.current!.click()}
      >
        <Icon name="camera" />
        {busy ? words.photograph.keeping : take}
      </button>
      <button type="button" class="button" disabled={busy} onClick={() => files.current!.click()}>
        <Icon name="folder" />
        {words.photograph.choose}
      </button>
      <input
        ref={camera}
        type="file"
        accept="image/*"
        capture="environment"
        hidden
        data-testid="camera"
        onChange={(event) => void keep(event.currentTarget)}
      />
      <input
        ref={files}
        type="file"
        accept="image/*"
        hidden
        data-testid="files"
        onChange={(event) => void keep(event.currentTarget)}
      />
    </div>
  )
}
