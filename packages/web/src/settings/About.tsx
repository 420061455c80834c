import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'

/** Put in when the page is built, from its package. */
declare const __GRIPBOOK_VERSION__: string

export function About() {
  return (
    <section class="card settings__part">
      <h2>{words.settings.about}</h2>
      <p>{words.settings.version(__GRIPBOOK_VERSION__)}</p>
      <p class="quiet">{words.settings.licence}</p>
      <div class="caution">
        <Icon name="warning" />
        <div class="stack stack--tight">
          <p>{words.settings.notTheManual}</p>
          <p>{words.settings.localRules}</p>
        </div>
      </div>
    </section>
  )
}
