import { useEffect } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { language } from '../words/index.ts'

export function hasVoice(): boolean {
  return typeof speechSynthesis !== 'undefined'
}

/** Says the words when they change, on request of the person; what was being said gives way. */
export function useVoice(text: string | null): void {
  const { settings } = useApp()
  useEffect(() => {
    if (!settings.voice || text === null || !hasVoice()) return
    speechSynthesis.cancel()
    const said = new SpeechSynthesisUtterance(text)
    said.lang = language
    speechSynthesis.speak(said)
    return () => speechSynthesis.cancel()
  }, [text, settings.voice])
}
