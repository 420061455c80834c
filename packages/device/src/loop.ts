/** The one loop of a tab that sends: at once when there is something new or the network is back, else after growing pauses. */
import { pauseAfter } from './pause.ts'
import type { Place } from './place.ts'
import type { Refusing, Sender } from './sender.ts'
import type { InTurn } from './turn.ts'

/** Why the loop is woken. */
export type Reason = 'new-entry' | 'seen' | 'network-back' | 'session'

export type Loop = {
  wake(reason: Reason): void
  /** Ends the loop after what it is just doing; resolves when it has ended. */
  stop(): Promise<void>
}

type Around = {
  place: Pick<Place, 'random' | 'patience'>
  sender: Sender
  turn: InTurn
  /** Ends the loop, and what it is waiting for. */
  ending: AbortController
  /** After each round: `last` null when all was sent. A throw of the database ends the round as `error`, and what the shop would have said is not known. */
  ended: (last: Refusing | null, error: unknown) => void
}

export function startLoop({ place, sender, turn, ending, ended }: Around): Loop {
  let failures = 0
  let last: Refusing | null = null
  let woken = true
  let wakeNow: (() => void) | null = null

  async function run(): Promise<void> {
    while (!ending.signal.aborted) {
      woken = false
      let error: unknown = null
      try {
        last = await turn(() => sender.round(ending.signal), ending.signal)
      } catch (thrown) {
        // What the round before came to says nothing of this one.
        last = null
        error = thrown
      }
      if (ending.signal.aborted) return
      failures = last === null && error === null ? 0 : failures + 1
      // Whatever was wrong, the shop may be another one afterwards: set back to an older state, or with another session.
      // One that only had too many questions is asked the rest of them.
      if (error !== null || (last !== null && !(last.why === 'later' && last.status === 429))) sender.lookAgain()
      ended(last, error)
      await rest(error)
    }
  }

  async function rest(error: unknown): Promise<void> {
    if (last?.why === 'later' && last.after > 0) await pause(last.after, false)
    else if (last === null && error === null) {
      if (await pause(place.patience.idle, true)) sender.lookAgain()
    } else await pause(pauseAfter(failures, place.patience, place.random), true)
  }

  /** True when the whole time has passed. Where the shop has named the time to wait, a new entry does not shorten it. */
  function pause(time: number, mayBeShort: boolean): Promise<boolean> {
    if (ending.signal.aborted || (mayBeShort && woken)) return Promise.resolve(false)
    return new Promise((done) => {
      const end = (whole: boolean) => {
        clearTimeout(timer)
        wakeNow = null
        done(whole)
      }
      const timer = setTimeout(() => end(true), time)
      wakeNow = () => {
        if (mayBeShort || ending.signal.aborted) end(false)
      }
    })
  }

  const running = run()
  return {
    wake(reason) {
      // Without a session every entry would be one question in vain. While a round runs it is not known yet what it will find.
      if (reason === 'new-entry' && wakeNow !== null && last?.why === 'refused' && last.status === 401) return
      if (reason !== 'new-entry') failures = 0
      // A page that is looked at many times a day does not ask after every unit each time.
      if (reason === 'network-back' || reason === 'session') sender.lookAgain()
      woken = true
      wakeNow?.()
    },
    async stop() {
      ending.abort()
      wakeNow?.()
      await running
    },
  }
}
