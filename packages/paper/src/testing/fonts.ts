import { readFileSync } from 'node:fs'
import { FONT_FILES } from '../fontFiles.ts'
import type { Fonts } from '../sheet.ts'

export const FONTS: Fonts = {
  regular: new Uint8Array(readFileSync(FONT_FILES.regular)),
  bold: new Uint8Array(readFileSync(FONT_FILES.bold)),
}

export const MADE = new Date('2026-03-01T00:00:00Z')
