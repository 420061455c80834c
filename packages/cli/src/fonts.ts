import { readFile } from 'node:fs/promises'
import type { Fonts } from '@gripbook/paper'

/** The fonts that come with Gripbook, for what it prints; `further`: a font file of the user's, for scripts that those lack. */
export async function loadFonts(further?: Uint8Array): Promise<Fonts> {
  const { FONT_FILES } = await import('@gripbook/paper')
  const [regular, bold] = await Promise.all([readFile(FONT_FILES.regular), readFile(FONT_FILES.bold)])
  return {
    regular: new Uint8Array(regular),
    bold: new Uint8Array(bold),
    ...(further === undefined ? {} : { further: [further] }),
  }
}
