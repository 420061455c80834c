/** Stops of the wrench: its band, its range, its calibration. */
import { intervalOf, type Quantity } from '@gripbook/engine'
import type { BodyOf } from '../events/catalogue.ts'
import type { BenchFace } from './benchFace.ts'
import type { Band, Facts, Stop } from './stop.ts'

/** Where nothing else is stated: the widest that a setting wrench may have. @source ISO 6789, Type II class A, at or below 10 N·m */
const USUAL_DEVIATION = 0.06
/** Share by which a torque may pass the end of its band before it counts as outside: rounding, no more. */
const SLACK = 1e-9

/**
 * Stops of one torqued bolt. `calibratedUntil` is what the record knows of the wrench by its number; what the entry itself says of it rules, over `facts` too. By feel
 * there is no figure to hold against a band, and a torque followed by an angle is held against what the entry wanted only.
 */
export function torqueStops(
  body: BodyOf<'pass-torqued'>,
  bench: BenchFace | undefined,
  calibratedUntil: string | undefined,
  facts: Facts,
): Stop[] {
  const { face, hole, torque, tool } = body
  const stops: Stop[] = []
  const until = tool?.calibratedUntil ?? calibratedUntil
  if (tool?.byFeel !== true && until !== undefined && facts.today !== undefined && until < facts.today)
    stops.push({ gate: 'calibration', face, hole, why: { code: 'out-of-calibration', until } })
  if (torque === undefined) return stops
  const reached = shown(torque)
  const wanted =
    body.wanted ?? (body.angle === undefined ? bench?.holes.find(({ id }) => id === hole)?.torque : undefined)
  if (body.final && wanted !== undefined) {
    const band = bandAround(wanted, tool?.deviation ?? facts.deviation ?? USUAL_DEVIATION)
    if (!isInside(reached, band))
      stops.push({ gate: 'torque out of band', face, hole, why: { code: 'out-of-band', torque, band } })
  }
  const range = tool?.range === undefined ? facts.range : { atLeast: tool.range[0], atMost: tool.range[1] }
  if (range !== undefined && !isInside(reached, range))
    stops.push({ gate: 'torque out of band', face, hole, why: { code: 'out-of-range', torque, range } })
  return stops
}

/** N·m, the wanted torque widened by the wrench's deviation. */
function bandAround(wanted: Quantity, deviation: number): Band {
  const { lo, hi } = intervalOf(wanted, 'torque')
  return { atLeast: rounded(lo * (1 - deviation)), atMost: rounded(hi * (1 + deviation)) }
}

/** Without the digits that a double makes up: 9.4, not 9.399999999999999. */
function rounded(torque: number): number {
  return Number(torque.toPrecision(12))
}

/** What the wrench showed: its own uncertainty is in the band already. */
function shown(torque: Quantity): Band {
  const figure =
    typeof torque === 'object' && 'value' in torque ? { value: torque.value, unit: torque.unit ?? 'N·m' } : torque
  const { lo, hi } = intervalOf(figure, 'torque')
  return { atLeast: lo, atMost: hi }
}

function isInside(inner: Band, { atLeast = 0, atMost = Number.POSITIVE_INFINITY }: Partial<Band>): boolean {
  return inner.atLeast >= atLeast * (1 - SLACK) && inner.atMost <= atMost * (1 + SLACK)
}
