import { Shell } from '../app/Shell.tsx'
import { Go } from '../units/Go.tsx'
import { words } from '../words/index.ts'

/** A unit of which nothing is on this device yet: it comes by itself when the shop is reached. */
export function NotHere() {
  return (
    <Shell title={words.unit.aUnit}>
      <div class="column">
        <div class="empty" role="status">
          <h2>{words.shell.notHere}</h2>
          <p>{words.shell.notHereWhat}</p>
          <Go to={{ at: 'units' }} class="button">
            {words.unit.toUnits}
          </Go>
        </div>
      </div>
    </Shell>
  )
}
