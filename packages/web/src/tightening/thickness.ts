/** What is typed for the thickness of a cover where mm are meant and inches were thought. */
import { intervalOf, type LengthUnit, readLength } from '@gripbook/engine'

/** mm: no cover that carries bolts is thinner (common practice, no source). */
const THIN = 1

/** The mm that the text stands for, where it names no unit and would be a likelier thickness in inches; null for any other. */
export function asThinAsInches(text: string, unit: LengthUnit): number | null {
  if (unit !== 'mm') return null
  const [inMm, inInches] = [readLength(text, 'mm'), readLength(text, 'in')]
  if (!inMm.ok || !inInches.ok) return null
  const millimetres = intervalOf(inMm.value).hi
  const namesItsUnit = millimetres === intervalOf(inInches.value).hi
  return namesItsUnit || millimetres <= 0 || millimetres >= THIN ? null : millimetres
}
