import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'

/** No bolts lie in the tray yet, and the way there. */
export function NoKinds({ onTray }: { onTray: () => void }) {
  return (
    <div class="empty">
      <h2>{words.readings.noKinds}</h2>
      <p>{words.readings.noKindsWhat}</p>
      <button type="button" class="button" onClick={onTray}>
        <Icon name="tray" />
        {words.readings.toTray}
      </button>
    </div>
  )
}
