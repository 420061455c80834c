import { useId } from 'preact/hooks'
import { ROLES, type Role } from '../../device/shop.ts'
import { words } from '../../words/index.ts'
import './RoleChoice.css'

/** A role with what it may do, in one line each. */
export function RoleChoice({ value, onChoose }: { value: Role; onChoose: (role: Role) => void }) {
  const name = useId()
  return (
    <fieldset class="field">
      <legend class="field__label">{words.settings.roleLabel}</legend>
      <div class="choice roles">
        {ROLES.map((role) => (
          <label key={role}>
            <input type="radio" name={name} checked={role === value} onChange={() => onChoose(role)} />
            <span>
              <b>{words.settings.role(role)}</b>
              {words.settings.may(role)}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}
