/** What sat in a hole when it was opened, whether that was right, and what was put there since. */
import type { HoleAnswer } from '@gripbook/engine'
import { Icon, type IconName } from '../look/icons.tsx'
import { sentence, words } from '../words/index.ts'

type Found = NonNullable<HoleAnswer['asFound']>
type Props = {
  asFound: Found
  /** The kind that was put there since and may sit there; null: none yet. */
  now: string | null
  named: (kind: string) => string
}

const LOOKS: Record<Found['verdict'], { icon: IconName; said: string }> = {
  'must change': { icon: 'swap', said: words.verdict.mustChange },
  right: { icon: 'tick', said: words.verdict.right },
  'may stay': { icon: 'question', said: words.verdict.mayStay },
}

export function AsFound({ asFound: { kind, verdict, why }, now, named }: Props) {
  const isChanged = verdict === 'must change' && now !== null
  const { icon, said } = isChanged ? { icon: 'tick' as const, said: words.verdict.isInNow(named(now)) } : LOOKS[verdict]
  return (
    <p class={`as-found as-found--${(isChanged ? 'right' : verdict).replace(' ', '-')}`}>
      <Icon name={icon} />
      <span>
        <b>
          {kind === 'none' ? words.verdict.foundEmpty : words.verdict.foundHere(named(kind))}
          {', '}
          {said}
        </b>
        <br />
        {sentence(why)}
      </span>
    </p>
  )
}
