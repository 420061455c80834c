/** The instrument of a figure, as it stands in its entry. */
import type { LengthUnit } from '@gripbook/engine'
import type { Settings } from '../device/settings.ts'
import { instrumentFor, inUnit } from '../readings/entry.ts'
import { oneLine } from '../units/texts.ts'
import type { Figure } from './figures.ts'

/** Under which it is remembered what was used last for a figure. */
export const usedFor = (reading: string) => `figure ${reading}`

export function isLength(unit: string): unit is LengthUnit {
  return unit === 'mm' || unit === 'in'
}

type Noted = { name: string; number?: string; errorLimit?: number; calibratedUntil?: string }

/** A length takes the ± of its instrument where none was typed; of another figure only the name of the instrument is known. */
export function notedWith(
  figure: Figure,
  quantity: string,
  settings: Pick<Settings, 'instruments' | 'used'>,
): Figure & { instrument?: Noted } {
  if (!isLength(figure.unit)) {
    const name = oneLine(settings.used[quantity] ?? '')
    return name === undefined ? figure : { ...figure, instrument: { name } }
  }
  const { name, number, calibratedUntil, ...off } = instrumentFor(quantity, settings)
  const errorLimit = inUnit(off, figure.unit)
  return {
    ...figure,
    plusMinus: figure.plusMinus ?? errorLimit,
    instrument: {
      name,
      ...(number === undefined ? {} : { number }),
      errorLimit,
      ...(calibratedUntil === undefined ? {} : { calibratedUntil }),
    },
  }
}
