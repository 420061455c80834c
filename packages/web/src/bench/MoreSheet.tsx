/** What is wanted now and then: pause, all steps, another wrench, a clock, the voice. */
import { useApp } from '../app/context.ts'
import { SendingChip } from '../app/SendingChip.tsx'
import { Icon, type IconName } from '../look/icons.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { words } from '../words/bench.ts'
import type { Over } from './general.ts'
import type { Awake } from './useWakeLock.ts'
import { VoiceChoice } from './VoiceChoice.tsx'

type Props = {
  /** The step is a torque that a wrench tells. */
  torque: boolean
  /** Something was done at the face: its cover can come off again. */
  begun: boolean
  awake: Awake
  tight: boolean
  /** Where the keys leave the dock no room for it. */
  onFeel: (() => void) | null
  onOpen: (over: Over) => void
  onPause: () => void
  onClose: () => void
}

const WAYS: readonly { over: Over; icon: IconName; words: string }[] = [
  { over: 'steps', icon: 'list', words: words.steps },
  { over: 'clock', icon: 'waiting', words: words.clockStart },
  { over: 'wrench', icon: 'gear', words: words.changeWrench },
]

export function MoreSheet({ torque, begun, awake, tight, onFeel, onOpen, onPause, onClose }: Props) {
  const { book } = useApp()
  return (
    <Sheet title={words.ways} onClose={onClose}>
      <ul class="stack stack--tight">
        <li>
          <button type="button" class="button button--act button--wide" onClick={onPause}>
            <Icon name="book" />
            {words.pause}
          </button>
        </li>
        {torque && (
          <li>
            <button type="button" class="button button--wide" onClick={() => onOpen('angle')}>
              <Icon name="turns" />
              {words.angleTitle}
            </button>
          </li>
        )}
        {onFeel !== null && (
          <li>
            <button type="button" class="button button--wide" onClick={onFeel}>
              <Icon name="tick" />
              {words.tightenByFeel}
            </button>
          </li>
        )}
        {WAYS.map((way) => (
          <li key={way.over}>
            <button type="button" class="button button--wide" onClick={() => onOpen(way.over)}>
              <Icon name={way.icon} />
              {way.words}
            </button>
          </li>
        ))}
        {begun && (
          <li>
            <button type="button" class="button button--wide" onClick={() => onOpen('open again')}>
              <Icon name="undo" />
              {words.openAgain}
            </button>
          </li>
        )}
      </ul>
      <VoiceChoice />
      <p class="quiet">
        <b>{words.keysTitle}.</b> {words.keysWhat}
      </p>
      {tight && book.name === 'shop' && <SendingChip />}
      <p class="quiet">{awake === 'held' ? words.awake : awake === 'cannot' ? words.notAwake : ''}</p>
    </Sheet>
  )
}
