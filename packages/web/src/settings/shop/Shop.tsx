/** Who belongs to the shop and what is signed in to it. The owner sees all and changes it; everyone else their own devices. */
import type { Person } from '@gripbook/device'
import { useState } from 'preact/hooks'
import { useApp } from '../../app/context.ts'
import { shop } from '../../device/shop.ts'
import { Icon } from '../../look/icons.tsx'
import { words } from '../../words/index.ts'
import { AskedPart } from './AskedPart.tsx'
import { CodeSheet } from './CodeSheet.tsx'
import { People } from './People.tsx'
import { Sessions } from './Sessions.tsx'
import { useAsked } from './useAsked.ts'

export function Shop({ person }: { person: Person }) {
  return (
    <section class="card settings__part">
      <h2>{words.settings.shop}</h2>
      {person.role === 'owner' ? <OwnersShop me={person.id} /> : <OwnSessions />}
    </section>
  )
}

function OwnersShop({ me }: { me: string }) {
  const [people, askPeople] = useAsked(shop.people)
  const [sessions, askSessions] = useAsked(shop.sessions)
  const [making, setMaking] = useState(false)
  const again = () => {
    askPeople()
    askSessions()
  }
  return (
    <>
      <button type="button" class="button button--act" onClick={() => setMaking(true)}>
        <Icon name="plus" />
        {words.settings.newCode}
      </button>
      <h3>{words.settings.people}</h3>
      <AskedPart asked={people} again={again}>
        {(value) => <People people={value} me={me} onChanged={again} />}
      </AskedPart>
      {sessions.state === 'here' && <h3>{words.settings.sessions}</h3>}
      {sessions.state === 'here' && <HereSessions sessions={sessions.value} onEnded={askSessions} />}
      {making && (
        <CodeSheet
          people={people.state === 'here' ? people.value : []}
          onClose={() => {
            setMaking(false)
            again()
          }}
        />
      )}
    </>
  )
}

function OwnSessions() {
  const [sessions, ask] = useAsked(shop.sessions)
  return (
    <>
      <h3>{words.settings.sessions}</h3>
      <AskedPart asked={sessions} again={ask}>
        {(value) => <HereSessions sessions={value} onEnded={ask} />}
      </AskedPart>
    </>
  )
}

function HereSessions(props: Omit<Parameters<typeof Sessions>[0], 'here'>) {
  return <Sessions {...props} here={useApp().book.device.id} />
}
