import { Icon } from '../look/icons.tsx'
import { words } from '../words/finish.ts'

/** That a unit came back, and whether what was found is told. */
export function BackTitle({ answered }: { answered: boolean }) {
  return (
    <h2 class={`sign ${answered ? 'sign--fits' : 'sign--may'}`}>
      <Icon name={answered ? 'tick' : 'undo'} />
      {words.backTitle}
    </h2>
  )
}
