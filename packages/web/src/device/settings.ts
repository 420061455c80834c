/** What the person has chosen for this device: kept on it, never sent. */
import type { LengthUnit, TorqueUnit } from '@gripbook/engine'

export type Instrument = {
  name: string
  /** Number in the shop, where it has one. */
  number?: string
  /** ± of one reading, in `unit`: what every verdict carries. */
  plusMinus: number
  unit: LengthUnit
  /** Least and greatest length that it reads, in `unit`. */
  range?: [number, number]
  /** Last day on which its calibration counts, ISO 8601. */
  calibratedUntil?: string
}

/** A wrench of the shop, as its label and its certificate say. */
export type Wrench = {
  name: string
  /** Number in the shop, where it has one. */
  number?: string
  /** How it tells what it has reached: it clicks at what is set, it shows or types a figure, or it has no reading at all. */
  tells: 'clicks' | 'shows' | 'nothing'
  /** Least and greatest torque, N·m. */
  range?: [number, number]
  /** Largest deviation as a share, where its certificate states one. */
  deviation?: number
  /** Last day on which its calibration counts, ISO 8601. */
  calibratedUntil?: string
}

export type Settings = {
  length: LengthUnit
  torque: TorqueUnit
  look: 'by system' | 'light' | 'dark' | 'bright'
  gloves: boolean
  /** CSS pixels in one true millimetre, from the bank card on the screen; null: never laid. */
  pixelsPerMillimetre: number | null
  instruments: Instrument[]
  /** Name of the instrument used last for each quantity ("grip", "length", …). */
  used: Record<string, string>
  /** The page's own keys for figures; null: where the pointer is a finger. */
  keys: boolean | null
  /** Thread given last to a hole and to a kind. */
  thread: string
  wrenches: Wrench[]
  /** Each step is said aloud. */
  voice: boolean
  /** The key that the foot pedal types, as the browser names it; null: none. */
  pedal: string | null
  /** What is printed on; absent: as the country of the browser's language does. */
  paper?: 'A4' | 'Letter'
  /** What was closed by hand and is not shown again: first-use hints, cautions that were read. */
  seen: string[]
  /** Id and name under which this device writes while it is not paired. */
  own: { id: string; name: string } | null
  /** Id of who is signed in here, as the shop said last: under it this device writes until the shop says otherwise. Null: nobody. */
  person: string | null
}

/**
 * What one reading at the bench may be off by, mm: common practice, no source. Wider than the instrument alone, for feel and burrs: DIN 862 allows a
 * digital caliper 0.02 mm up to 200 mm and 0.02 mm more for depth. What the shop's own certificate says rules.
 */
export const USUAL_INSTRUMENTS: readonly Instrument[] = [
  { name: 'digital caliper', plusMinus: 0.05, unit: 'mm' },
  { name: 'depth gauge', plusMinus: 0.1, unit: 'mm' },
  { name: 'wedge gauge', plusMinus: 0.05, unit: 'mm' },
  { name: 'vernier caliper', plusMinus: 0.1, unit: 'mm' },
  { name: 'depth probe', plusMinus: 0.2, unit: 'mm' },
  { name: 'steel rule', plusMinus: 0.5, unit: 'mm' },
]

export const FIRST_SETTINGS: Settings = {
  length: 'mm',
  torque: 'N·m',
  look: 'by system',
  gloves: false,
  pixelsPerMillimetre: null,
  instruments: [...USUAL_INSTRUMENTS],
  used: {},
  keys: null,
  thread: 'M6',
  wrenches: [],
  voice: false,
  pedal: null,
  seen: [],
  own: null,
  person: null,
}

const PLACE = 'gripbook settings'

/** What was chosen here before; what cannot be read counts as not chosen. */
export function readSettings(): Settings {
  try {
    const kept = JSON.parse(localStorage.getItem(PLACE) ?? '{}') as Partial<Settings>
    return { ...FIRST_SETTINGS, ...kept }
  } catch {
    return FIRST_SETTINGS
  }
}

/** Where the browser keeps nothing the choice holds until the page is closed. */
export function writeSettings(settings: Settings): void {
  try {
    localStorage.setItem(PLACE, JSON.stringify(settings))
  } catch {
    // Nothing of the record is in it.
  }
}
