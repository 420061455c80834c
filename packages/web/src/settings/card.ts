/** A bank card tells how large a CSS pixel is on this screen. */

/** Sides of a bank card in mm: ISO/IEC 7810, ID-1. */
export const CARD = { long: 85.6, short: 53.98, corner: 3.18 } as const

/** CSS pixels in a millimetre where nothing else is known: 96 per inch (CSS Values and Units, 5.2). */
export const ASSUMED = 96 / 25.4

/** Pixels per mm of screens in use, from a large wall screen to a small phone; common practice, no source. */
const LEAST = 1.5
const MOST = 11
/** What a phone or a small tablet has, as a start: most hold 5.5 to 6.5. */
const OF_A_PHONE = 6
const MARGIN = 8

export type Laying = {
  side: 'long' | 'short'
  /** Of the card's side that lies across, in mm. */
  across: number
  /** Width of the outline in CSS pixels: least and greatest that fits. */
  least: number
  most: number
}

/** How the card lies on a screen of which `room` CSS pixels are free across: upright where its long side would not fit. */
export function layingFor(room: number): Laying {
  const side = room >= CARD.long * OF_A_PHONE + 2 * MARGIN ? 'long' : 'short'
  const across = CARD[side]
  const least = Math.ceil(across * LEAST)
  return { side, across, least, most: Math.max(least + 1, Math.floor(Math.min(room - 2 * MARGIN, across * MOST))) }
}

/** Width of the outline to begin with, in CSS pixels. */
export function firstWidth({ side, across, least, most }: Laying, kept: number | null): number {
  const scale = kept ?? (side === 'short' ? OF_A_PHONE : ASSUMED)
  return Math.min(Math.max(Math.round(across * scale), least), most)
}

/** CSS pixels in one true millimetre when the outline of that width is as large as the card. */
export function scaleOf(width: number, { across }: Pick<Laying, 'across'>): number {
  return Math.round((width / across) * 10_000) / 10_000
}
