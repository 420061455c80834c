import { readingWaived } from '@gripbook/record'
import { useApp } from '../app/context.ts'
import { words } from '../words/finish.ts'
import { ReasonSheet } from './ReasonSheet.tsx'

/** A figure is accepted by name, with the reason. */
export function WaiveSheet({ unit, reading, onClose }: { unit: string; reading: string; onClose: () => void }) {
  const { write } = useApp()
  return (
    <ReasonSheet
      unit={unit}
      title={words.waiveTitle(reading)}
      what={words.waiveWhat}
      label={words.why}
      needed={words.whyNeeded}
      act={words.waiveDo}
      onClose={onClose}
      onKeep={async (reason) =>
        (await write(unit, [readingWaived({ reading, reason })], words.waived(reading))) !== null
      }
    />
  )
}
