/** What the figures are, and what they are not: always in sight below them, what a person should look up or put right before the rest. */
import { isRough, isToMind, type TighteningAnswer } from '@gripbook/engine'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/tightening.ts'

export function Assumptions({ answer }: { answer: TighteningAnswer }) {
  const { settings } = useApp()
  const { error, grid } = answer.accuracy
  const accuracy = words.accuracy(error, grid, settings.length)
  const toMind = [
    ...answer.assumptions.filter(isToMind).map((one) => words.assumption(one, settings.length)),
    ...(isRough(answer) ? [`${accuracy} ${words.rough}`] : []),
  ]
  return (
    <section class="stack stack--tight assumptions">
      <h2>{words.assumptionsTitle}</h2>
      {toMind.map((one) => (
        <div key={one} class="caution" role="note">
          <Icon name="warning" />
          <p>{one}</p>
        </div>
      ))}
      <ul>
        {answer.assumptions
          .filter((one) => !isToMind(one))
          .map((one) => (
            <li key={one.what}>{words.assumption(one, settings.length)}</li>
          ))}
        <li>{words.sameFriction}</li>
        <li>{words.bedRangeOf(answer.bed.soft, answer.bed.stiff)}</li>
        {!isRough(answer) && <li>{accuracy}</li>}
      </ul>
    </section>
  )
}
