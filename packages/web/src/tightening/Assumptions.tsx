/** What the figures are, and what they are not: always in sight below them. */
import type { TighteningAnswer } from '@gripbook/engine'
import { useApp } from '../app/context.ts'
import { words } from '../words/tightening.ts'

export function Assumptions({ answer }: { answer: TighteningAnswer }) {
  const { settings } = useApp()
  const { error, grid } = answer.accuracy
  return (
    <section class="stack stack--tight assumptions">
      <h2>{words.assumptionsTitle}</h2>
      <ul>
        {answer.assumptions.map((one) => (
          <li key={one.what}>{words.assumption(one, settings.length)}</li>
        ))}
        <li>{words.bedRangeOf(answer.bed.soft, answer.bed.stiff)}</li>
        <li>{words.accuracy(error, grid, settings.length)}</li>
      </ul>
    </section>
  )
}
