import type { ComponentChildren } from 'preact'
import './Foot.css'

/** The bar at the bottom of a screen with what is done there most. */
export function Foot({ children }: { children: ComponentChildren }) {
  return (
    <div class="foot">
      <div class="buttons buttons--even">{children}</div>
    </div>
  )
}
