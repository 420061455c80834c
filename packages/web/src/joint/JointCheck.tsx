/** The torque check of a hole: one tap away, fetched and worked out when it is opened. */
import { useState } from 'preact/hooks'
import { later } from '../app/later.tsx'
import { words } from '../words/index.ts'
import type { JointProps } from './JointAnswer.tsx'

const JointAnswer = later<JointProps>(() => import('./JointAnswer.tsx').then((part) => part.JointAnswer))

export function JointCheck(props: JointProps) {
  const [open, setOpen] = useState(false)
  return (
    <details class="joint" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary class="button">{words.joint.open}</summary>
      {open && <JointAnswer {...props} />}
    </details>
  )
}
