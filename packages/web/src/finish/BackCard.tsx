/** A unit that came back: what the customer says, and what was found; what is not answered yet is asked here. */
import type { FoldedUnit } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { Icon } from '../look/icons.tsx'
import { useNames } from '../unit/useNames.ts'
import { place } from '../units/here.ts'
import { sayWhen } from '../units/when.ts'
import { words } from '../words/finish.ts'
import { AnswerSheet } from './AnswerSheet.tsx'
import { BackTitle } from './BackTitle.tsx'
import { type ComeBack, sayFound } from './comeBack.ts'

export function BackCard({ folded, back }: { folded: FoldedUnit; back: ComeBack }) {
  const nameOf = useNames()
  const [answering, setAnswering] = useState(false)
  const answered = back.answers.length > 0
  return (
    <section class="card stack stack--tight">
      <BackTitle answered={answered} />
      <p class="finish__complaint" dir="auto">
        {back.complaint}
      </p>
      {back.answers.map((answer) => (
        <div key={answer.event}>
          <p class="finish__found" dir="auto">
            {sayFound(answer, folded)}
          </p>
          <p class="quiet">{words.signedBy(nameOf(answer.who), sayWhen(answer.at, Date.now(), place))}</p>
        </div>
      ))}
      <div class="buttons">
        <button type="button" class={`button${answered ? '' : ' button--act'}`} onClick={() => setAnswering(true)}>
          <Icon name={answered ? 'plus' : 'question'} />
          {answered ? words.answerMore : words.answer}
        </button>
      </div>
      {answering && <AnswerSheet folded={folded} back={back} onClose={() => setAnswering(false)} />}
    </section>
  )
}
