import { useApp } from '../../app/context.ts'
import { type ShopSession, shop } from '../../device/shop.ts'
import { words } from '../../words/index.ts'
import { fromNow } from '../figures.ts'

type Props = {
  sessions: readonly ShopSession[]
  /** Id of this device: it is signed out where that is said what stays. */
  here: string
  onEnded: () => void
}

export function Sessions({ sessions, here, onEnded }: Props) {
  const { say } = useApp()

  async function end({ id, device, person }: ShopSession) {
    const answer = await shop.endSession(id)
    if (answer.ok) say({ words: words.settings.sessionEnded(device.name, person.name), tone: 'done' })
    else say({ words: words.settings.refused(answer.code), tone: 'fault' })
    onEnded()
  }

  return (
    <ul class="lines">
      {sessions.map((session) => (
        <li key={session.id}>
          <div class="entry">
            <span class="entry__words">
              <span class="entry__name" dir="auto">
                {session.person.name} · {session.device.name}
              </span>
              <span class="entry__more">
                {session.device.id === here
                  ? words.settings.sessionHere
                  : words.settings.sessionUsed(fromNow(Date.parse(session.lastUsed), Date.now()))}
              </span>
            </span>
            {session.device.id !== here && (
              <button
                type="button"
                class="button"
                aria-label={words.settings.endSessionOf(session.device.name, session.person.name)}
                onClick={() => void end(session)}
              >
                {words.settings.endSession}
              </button>
            )}
          </div>
        </li>
      ))}
    </ul>
  )
}
