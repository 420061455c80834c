import { useApp } from '../app/context.ts'
import { Choice } from '../parts/Choice.tsx'
import { words } from '../words/bench.ts'
import { hasVoice } from './useVoice.ts'

/** Whether the steps are said aloud, where the device has a voice. */
export function VoiceChoice() {
  const { settings, choose } = useApp()
  if (!hasVoice()) return <p class="quiet">{words.voiceNone}</p>
  return (
    <Choice
      label={words.voice}
      options={[
        { value: 'off', words: words.voiceOff },
        { value: 'on', words: words.voiceOn },
      ]}
      value={settings.voice ? 'on' : 'off'}
      onChoose={(chosen) => choose({ voice: chosen === 'on' })}
    />
  )
}
