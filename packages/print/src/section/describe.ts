import { intervalFigures } from '../svg/figures.ts'
import type { SectionInput } from './input.ts'
import type { Measures, Seen } from './measures.ts'
import { NAMES, VERDICT } from './words.ts'

/** The drawing in words, for those who do not see it. */
export function describe({ hole, thread, bolt, look }: SectionInput, measures: Measures, scale: string): string {
  const unit = look.unit ?? 'mm'
  const told = (name: string, value: Seen) => {
    const figures = intervalFigures(value, unit).replace('? ', '')
    return value.known && value.hi === 0 ? '' : ` ${name} ${figures}${value.known || value.lo > 0 ? ` ${unit}` : ''};`
  }
  const { bracket, grip, gasket, washer, mouth, threadDepth, bottom, through, behind } = measures
  const parts = [
    `Section of hole ${hole.id}, ${thread.name}, ${through ? 'through' : 'blind'}, scale ${scale}:`,
    told(NAMES.bracket, bracket),
    told(NAMES.grip, grip),
    told(NAMES.gasket, gasket),
    told(NAMES.washer, washer),
    told(NAMES.mouth, mouth),
    told(NAMES.threadDepth, threadDepth),
    through ? told(NAMES.behind, behind) : told(NAMES.bottom, bottom),
  ]
  const sum = parts.join('').replace(/;$/, '.')
  if (!bolt || !measures.bolt) return `${sum} ${NAMES.empty}.`
  const { stickOut, engagement } = measures.bolt
  const placed = stickOut ? ` ${NAMES.stickOut} ${intervalFigures(stickOut, unit)} ${unit}.` : ''
  const engaged = engagement ? ` ${NAMES.engaged} ${intervalFigures(engagement, unit)} ${unit}.` : ''
  return `${sum} Bolt ${bolt.kind.id}, ${bolt.thread.name}: ${VERDICT[bolt.verdict]}. ${bolt.why}.${placed}${engaged}`
}
