import type { Settings } from '../device/settings.ts'

const DARK = '(prefers-color-scheme: dark)'
const CONTRAST = '(prefers-contrast: more)'

export type ShownLook = 'light' | 'dark' | 'bright'

/** The look that a choice comes to on this device at this moment. */
export function lookOf({ look }: Pick<Settings, 'look'>): ShownLook {
  if (look !== 'by system') return look
  if (matchMedia(CONTRAST).matches) return 'bright'
  return matchMedia(DARK).matches ? 'dark' : 'light'
}

/** Puts the choice on the page and keeps following the system; gives what stops that. */
export function applyLook(settings: Settings): () => void {
  const root = document.documentElement
  const show = () => {
    root.dataset.look = lookOf(settings)
    root.dataset.gloves = settings.gloves ? 'on' : 'off'
    if (settings.pixelsPerMillimetre === null) root.style.removeProperty('--mm')
    else root.style.setProperty('--mm', `${settings.pixelsPerMillimetre}px`)
  }
  show()
  const asked = [matchMedia(DARK), matchMedia(CONTRAST)]
  for (const one of asked) one.addEventListener('change', show)
  return () => {
    for (const one of asked) one.removeEventListener('change', show)
  }
}

/** The look of a drawing beside that of the page. */
export function drawingTheme(settings: Pick<Settings, 'look'>): 'light' | 'dark' | 'high-contrast' {
  const look = lookOf(settings)
  return look === 'bright' ? 'high-contrast' : look
}
