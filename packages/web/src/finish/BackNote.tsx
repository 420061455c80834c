/** On the unit: that it came back, why, and the way to what the record answers and what is to be told. */
import type { FoldedUnit } from '@gripbook/record'
import { useMemo } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Go } from '../units/Go.tsx'
import { words } from '../words/finish.ts'
import { BackTitle } from './BackTitle.tsx'
import { comeBacksNow } from './comeBack.ts'
import './BackNote.css'

export function BackNote({ folded }: { folded: FoldedUnit }) {
  const { book } = useApp()
  const backs = useMemo(() => comeBacksNow(folded), [folded])
  if (backs.length === 0) return null
  const answered = backs.every(({ answers, asked }) => answers.length > 0 || !asked)
  return (
    <section class="card stack stack--tight">
      <BackTitle answered={answered} />
      {backs.map(({ event, complaint }) => (
        <p key={event} class="back-note" dir="auto">
          {complaint}
        </p>
      ))}
      <p class="quiet">{words.backWhat}</p>
      <Go to={{ at: 'finish', book: book.name, unit: folded.id }} class="button">
        <Icon name={answered ? 'forth' : 'question'} />
        {answered ? words.backRead : words.backAnswer}
      </Go>
    </section>
  )
}
