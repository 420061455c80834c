import { useEffect } from 'preact/hooks'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'
import { useApp, useNotice } from './context.ts'
import './NoticeBar.css'

/** ms: with something to take back, and without: then it only lies over the head. */
const SHOWN_FOR = 12_000
const SAID_FOR = 6_000

/** What was just done, with its undo; a fault stays until it is closed. */
export function NoticeBar() {
  const { say } = useApp()
  const { notice, undo } = useNotice()
  useEffect(() => {
    if (notice?.tone !== 'done') return
    const timer = setTimeout(() => say(null), notice.undo === undefined ? SAID_FOR : SHOWN_FOR)
    return () => clearTimeout(timer)
  }, [notice, say])
  return (
    <div class="notice-place" role="status" aria-live="polite">
      {notice !== null && (
        <div class={`notice notice--${notice.tone}`}>
          <Icon name={notice.tone === 'done' ? 'tick' : 'warning'} />
          <p class="notice__words">{notice.words}</p>
          {notice.undo !== undefined && (
            <button type="button" class="notice__undo" onClick={() => void undo()}>
              <Icon name="undo" />
              {words.shell.undo}
            </button>
          )}
          {(notice.tone === 'fault' || notice.undo === undefined) && (
            <button type="button" class="notice__close" aria-label={words.shell.close} onClick={() => say(null)}>
              <Icon name="cross" />
            </button>
          )}
        </div>
      )}
    </div>
  )
}
