import type { Palette } from '../look/palette.ts'
import { element, line, rect } from '../svg/element.ts'

export type Hatches = { defs: string; fill: (name: HatchName) => string }
export type HatchName = 'case' | 'part' | 'bracket' | 'engaged' | 'cannot' | 'may' | 'fits'

/** Hatching per material and state. Parts that touch lean to different sides or stand at different distances (ISO 128-50). */
export function hatches(prefix: string, palette: Palette): Hatches {
  const pattern = (name: HatchName, step: number, angle: number, content: string) =>
    element(
      'pattern',
      {
        id: `${prefix}-${name}`,
        width: step,
        height: step,
        patternUnits: 'userSpaceOnUse',
        patternTransform: `rotate(${angle})`,
      },
      content,
    )
  const stroke = (step: number, colour: string, width: number) =>
    line(0, step / 2, step, step / 2, { stroke: colour, 'stroke-width': width })
  const ground = (step: number, colour: string) => rect(0, 0, step, step, { fill: colour })
  const crossed = (step: number, colour: string) =>
    stroke(step, colour, 1.6) + line(step / 2, 0, step / 2, step, { stroke: colour, 'stroke-width': 1.6 })
  return {
    fill: (name) => `url(#${prefix}-${name})`,
    defs: element(
      'defs',
      {},
      pattern('case', 8, 45, ground(8, palette.case) + stroke(8, palette.caseHatch, 1)),
      pattern('part', 6, -45, ground(6, palette.part) + stroke(6, palette.partHatch, 1)),
      pattern('bracket', 4.5, 45, ground(4.5, palette.bracket) + stroke(4.5, palette.bracketHatch, 1)),
      pattern('engaged', 4, -45, stroke(4, palette.engaged, 1.4)),
      pattern('fits', 4, 45, stroke(4, palette.fits, 1.2)),
      pattern('cannot', 5, 45, ground(5, palette.paper) + crossed(5, palette.cannot)),
      pattern(
        'may',
        5,
        0,
        ground(5, palette.paper) + element('circle', { cx: 2.5, cy: 2.5, r: 1.3, fill: palette.may }),
      ),
    ),
  }
}
