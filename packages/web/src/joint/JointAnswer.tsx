/** What the stated torque does to the bolt of a hole: band, clamp load, how much of each part is used, warnings. */
import {
  type JointAnswer as Answered,
  type Face,
  type Hole,
  joint,
  type Kind,
  type UnitName,
  writeInterval,
  writeQuantity,
} from '@gripbook/engine'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { language, words } from '../words/index.ts'
import { askJoint } from './askJoint.ts'
import './JointAnswer.css'

export type JointProps = { face: Face; hole: Hole; kinds: readonly Kind[]; kind: string | undefined }

const KILONEWTON = new Intl.NumberFormat(language, { minimumFractionDigits: 1, maximumFractionDigits: 1 })
const PERCENT = new Intl.NumberFormat(language, { style: 'percent', maximumFractionDigits: 0 })

export function JointAnswer({ face, hole, kinds, kind }: JointProps) {
  const { settings } = useApp()
  const asked = askJoint(
    face,
    hole,
    kinds.find(({ id }) => id === kind),
  )
  if (!asked.can) return <p>{asked.lacks === 'torque' ? words.joint.noTorque : words.joint.noThread}</p>
  return <Figures answer={joint(asked.wanted)} stated={writeQuantity(asked.stated, 'torque')} unit={settings.torque} />
}

function Figures({ answer, stated, unit }: { answer: Answered; stated: string; unit: UnitName }) {
  const { verdicts, usual, clamp, utilisations, cautions, notChecked, sources, torque, engagement } = answer
  const kilonewton = (newton: number) => `${KILONEWTON.format(newton / 1000)} kN`
  return (
    <div class="stack">
      <h3>{words.joint.title}</h3>
      <p>
        {words.joint.stated(stated)}
        {`. ${answer.thread} ${answer.class.name}, ${answer.head.name}.`}
      </p>
      <ul class="stack stack--tight">
        {verdicts.map(({ verdict, why }) => (
          <li key={verdict} class={`joint__verdict${verdict === 'in the usual band' ? ' joint__verdict--fine' : ''}`}>
            <Icon name={verdict === 'in the usual band' ? 'tick' : 'warning'} />
            <p>
              <b>{verdict}</b>
              <br />
              {why}
            </p>
          </li>
        ))}
      </ul>
      {cautions.map((caution) => (
        <p key={caution} class="caution">
          <Icon name="warning" />
          <span>{caution}</span>
        </p>
      ))}
      <p>{words.joint.band(writeInterval(usual.band, unit, 1))}</p>
      {usual.book !== undefined && (
        <p class="quiet">{words.joint.book(writeInterval(usual.book.band, unit, 1), usual.book.source)}</p>
      )}
      <p>{words.joint.clamp(kilonewton(clamp.lo), kilonewton(clamp.hi))}</p>
      <p>{words.joint.wrench(writeInterval(torque.onWrench, unit, 1))}</p>
      {engagement !== undefined && <p>{words.joint.engagementNeeded(writeInterval(engagement.needed, 'mm', 1))}</p>}
      <h3>{words.joint.parts}</h3>
      <ul class="lines">
        {utilisations.map(({ part, share, source }) => (
          <li key={part} class="joint__part">
            <span>{part}</span>
            <b>{words.joint.share(PERCENT.format(share.lo), PERCENT.format(share.hi))}</b>
            <meter min={0} max={1.2} low={0.9} high={1} value={Math.min(1.2, share.hi)} aria-label={part} />
            <span class="quiet">{source}</span>
          </li>
        ))}
      </ul>
      {notChecked.length > 0 && (
        <p class="quiet">
          {words.joint.notChecked}: {notChecked.join(' ')}
        </p>
      )}
      <p class="quiet">
        {words.joint.sources}: {sources.join('; ')}
      </p>
    </div>
  )
}
