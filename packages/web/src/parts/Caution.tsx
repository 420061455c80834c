import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'

type Props = {
  /** Under which it is remembered that it was read. */
  name: string
  words: string
  seen: string
}

/** A caution at the step that it belongs to; read once, it leaves the room to the work. */
export function Caution({ name, words: what, seen }: Props) {
  const { settings, choose } = useApp()
  if (settings.seen.includes(name)) return null
  return (
    <div class="caution" role="note">
      <Icon name="warning" />
      <div class="stack stack--tight">
        <p>{what}</p>
        <div>
          <button type="button" class="button" onClick={() => choose({ seen: [...settings.seen, name] })}>
            {seen}
          </button>
        </div>
      </div>
    </div>
  )
}
