/** The manual's order: pass by pass, tapped on the picture or typed. */
import type { Face } from '@gripbook/engine'
import { Icon } from '../look/icons.tsx'
import { TextField } from '../parts/Field.tsx'
import { words } from '../words/tightening.ts'
import type { Draft } from './draft.ts'
import { type PassDraft, readSequence } from './sequence.ts'
import { WithUnit } from './WithUnit.tsx'

type Props = {
  face: Face
  draft: Draft
  tapping: number | null
  faultAt: (pass: number) => string
  onChange: (draft: Draft) => void
  onTapping: (pass: number | null) => void
}

export function OrderFields({ face, draft, tapping, faultAt, onChange, onTapping }: Props) {
  const { passes } = draft
  const holes = face.holes.map(({ id }) => id)
  const put = (index: number, change: Partial<PassDraft>) =>
    onChange({ ...draft, passes: passes.map((pass, i) => (i === index ? { ...pass, ...change } : pass)) })
  /** The next pass goes the same way at full torque until it is changed. */
  const add = () => {
    const next: PassDraft = { share: '100', sequence: passes.at(-1)?.sequence ?? '' }
    onChange({ ...draft, passes: [...passes, next] })
    onTapping(passes.length === 0 ? 0 : null)
  }
  return (
    <fieldset class="stack stack--tight">
      <legend class="field__label">{words.order}</legend>
      <p class="quiet">
        {words.orderWhat} {passes.length > 0 && words.orderTap}
      </p>
      {passes.map((pass, i) => (
        <div key={i} class="card stack stack--tight">
          <div class="pass-draft">
            <WithUnit
              label={words.passShare(i + 1)}
              unit="%"
              value={pass.share}
              fault=""
              onInput={(share) => put(i, { share })}
            />
            <button
              type="button"
              class="button"
              aria-label={words.passRemove(i + 1)}
              onClick={() => {
                onChange({ ...draft, passes: passes.filter((_, other) => other !== i) })
                onTapping(null)
              }}
            >
              <Icon name="cross" />
            </button>
          </div>
          <TextField
            label={words.passHoles(i + 1)}
            value={pass.sequence}
            onInput={(sequence) => put(i, { sequence })}
            fault={faultAt(i)}
          />
          <div class="buttons">
            <button
              type="button"
              class={`button${tapping === i ? ' button--act' : ''}`}
              aria-pressed={tapping === i}
              onClick={() => onTapping(tapping === i ? null : i)}
            >
              <Icon name="mark" />
              {words.passTap(i + 1)}
            </button>
            <p class="quiet" role="status">
              {words.passTapped(readSequence(pass.sequence, holes).holes.length, holes.length)}
            </p>
          </div>
        </div>
      ))}
      <button type="button" class="button" onClick={add}>
        <Icon name="plus" />
        {passes.length === 0 ? words.passFirst : words.passAdd}
      </button>
    </fieldset>
  )
}
