import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { words } from '../words/index.ts'
import { CardSheet } from './CardSheet.tsx'
import './Gloves.css'

/** Keys in true millimetres. It works without the card; the card makes it sure. */
export function Gloves() {
  const { settings, choose, say } = useApp()
  const [laying, setLaying] = useState(false)
  const scale = settings.pixelsPerMillimetre
  return (
    <section class="card settings__part">
      <h2>{words.settings.gloves}</h2>
      <Choice
        label={words.settings.gloveMode}
        options={[
          { value: 'off', words: words.settings.off },
          { value: 'on', words: words.settings.on },
        ]}
        value={settings.gloves ? 'on' : 'off'}
        onChoose={(chosen) => choose({ gloves: chosen === 'on' })}
      />
      <p class="quiet">{words.settings.glovesWhat}</p>
      <div class="key-preview">
        <span class="key-preview__key" aria-hidden="true" />
        <p>{words.settings.keyPreview}</p>
      </div>
      <p>{scale === null ? words.settings.scaleAssumed : words.settings.scaleKnown(scale.toFixed(2))}</p>
      <div class="buttons">
        <button type="button" class="button" onClick={() => setLaying(true)}>
          <Icon name="scale" />
          {scale === null ? words.settings.layCard : words.settings.layAgain}
        </button>
        {scale !== null && (
          <button type="button" class="button button--plain" onClick={() => choose({ pixelsPerMillimetre: null })}>
            {words.settings.forgetCard}
          </button>
        )}
      </div>
      {laying && (
        <CardSheet
          onClose={() => setLaying(false)}
          onKept={(pixelsPerMillimetre) => {
            choose({ pixelsPerMillimetre })
            setLaying(false)
            say({ words: words.settings.cardKept, tone: 'done' })
          }}
        />
      )}
    </section>
  )
}
