import { useEffect, useState } from 'preact/hooks'
import { install, installing, watchInstalling } from '../device/install.ts'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'

/** How the page gets onto the device, or why it cannot there. */
export function Installing() {
  const [how, setHow] = useState(installing)
  useEffect(() => watchInstalling(() => setHow(installing())), [])
  return (
    <section class="card settings__part">
      <h2>{words.settings.installTitle}</h2>
      {how === 'installed' && <p>{words.settings.installed}</p>}
      {how === 'by hand' && <p>{words.settings.installByHand}</p>}
      {how === 'not here' && <p>{words.settings.installNotHere}</p>}
      {how === 'offered' && (
        <>
          <p>{words.settings.installOffered}</p>
          <button type="button" class="button button--act" onClick={() => void install()}>
            {words.settings.installDo}
          </button>
        </>
      )}
      {how === 'not secure' && (
        <>
          <p class="caution">
            <Icon name="off" />
            <span>{words.settings.notSecure}</span>
          </p>
          <p>{words.settings.notSecureWhat}</p>
          <p>
            <a href="/trust">{words.settings.trustLink}</a>
          </p>
        </>
      )}
    </section>
  )
}
