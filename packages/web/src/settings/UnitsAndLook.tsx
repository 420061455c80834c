import { useApp } from '../app/context.ts'
import type { Settings } from '../device/settings.ts'
import { Choice } from '../parts/Choice.tsx'
import { words } from '../words/index.ts'

const { lengths, torques, looks } = words.settings

export function UnitsAndLook() {
  const { settings, choose } = useApp()
  return (
    <>
      <section class="card settings__part">
        <h2>{words.settings.units}</h2>
        <Choice
          label={words.settings.length}
          options={options(lengths)}
          value={settings.length}
          onChoose={(length) => choose({ length })}
        />
        <Choice
          label={words.settings.torque}
          options={options(torques)}
          value={settings.torque as keyof typeof torques}
          onChoose={(torque) => choose({ torque })}
        />
        <p class="quiet">{words.settings.unitsNote}</p>
      </section>
      <section class="card settings__part">
        <h2>{words.settings.look}</h2>
        <Choice
          label={words.settings.look}
          quiet
          options={options<Settings['look']>(looks)}
          value={settings.look}
          onChoose={(look) => choose({ look })}
        />
        <p class="quiet">{words.settings.brightNote}</p>
      </section>
    </>
  )
}

function options<T extends string>(named: Record<T, string>): { value: T; words: string }[] {
  return (Object.keys(named) as T[]).map((value) => ({ value, words: named[value] }))
}
