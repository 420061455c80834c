import * as heads from '../../../published/heads.ts'
import * as areas from '../../../published/stress-areas.ts'
import * as limits from '../../../published/thread-limits.ts'
import { type Check, checksOf, digits, thread } from '../../joints/testing/check.ts'
import {
  boltLimits,
  clearanceHole,
  headsFor,
  holeLimits,
  socketsFor,
  standardLengths,
  standardThreadLength,
  stressArea,
} from '../index.ts'

const SQUARE_INCH = 645.16
const rounding = digits(0.5)

/** 'pitch max' → pitchMax */
const key = (limit: string): string => limit.replace(/ (\w)/, (_, letter: string) => letter.toUpperCase())
const bolt = ([name, limit]: string[]): number =>
  boltLimits(thread(name as string))[key(limit as string) as keyof Omit<ReturnType<typeof boltLimits>, 'basis'>]
const hole = ([name, limit]: string[]): number =>
  holeLimits(thread(name as string))[key(limit as string) as keyof Omit<ReturnType<typeof holeLimits>, 'basis'>]

/** Every published figure about threads, heads, holes and lengths, beside ours. The tests and `npm run checks` share this list. */
export function threadChecks(): Check[] {
  return [
    ...[areas.twoDecimals, areas.iso898Coarse, areas.iso898Fine].flatMap((table) =>
      checksOf(table, digits(table === areas.twoDecimals ? 1 : 0.5), ([name]) => stressArea(thread(name as string))),
    ),
    ...checksOf(areas.shigleyInch, digits(1), ([name]) => stressArea(thread(name as string)) / SQUARE_INCH),
    ...[limits.bolt6g, limits.bolt6gRecalled].flatMap((table) => checksOf(table, rounding, bolt)),
    ...[limits.hole6H, limits.hole6HRecalled].flatMap((table) => checksOf(table, rounding, hole)),
    ...checksOf(limits.hole2B, rounding, (cells) => hole(cells) / 25.4),
    ...checksOf(heads.heads, rounding, ([standard, name, dimension]) => {
      const head = headsFor(thread(name as string)).find((h) => h.standard === standard)
      return Number(head?.[dimension as 'bearing'] ?? Number.NaN)
    }),
    ...checksOf(heads.clearanceHoles, rounding, ([name, series]) =>
      Number(clearanceHole(thread(name as string))?.[series as 'fine'] ?? Number.NaN),
    ),
    ...checksOf(heads.threadLengths, rounding, ([name]) => standardThreadLength(thread(name as string), 125)),
    ...heads.preferredLengths.rows.map(([printed]): Check => {
      const length = Number(printed)
      const made = standardLengths({
        profile: 'metric',
        diameter: Math.max(length / 20, Math.min(5, length / 1.2)),
        pitch: 1,
        name: '',
      })
      return {
        what: 'a length among those made',
        source: `${heads.preferredLengths.source}, ${heads.preferredLengths.table}`,
        basis: heads.preferredLengths.basis,
        unit: 'mm',
        published: printed as string,
        ours: made.includes(length) ? length : Number.NaN,
        allowed: 0,
      }
    }),
    ...heads.sockets.rows.flatMap(([flats, names]) =>
      (names as string).split(' ').map(
        (name): Check => ({
          what: `socket that fits ${name}`,
          source: `${heads.sockets.source}, ${heads.sockets.table}`,
          basis: heads.sockets.basis,
          unit: 'mm',
          published: flats as string,
          ours: socketsFor(Number(flats)).find((h) => h.thread === name)?.acrossFlats ?? Number.NaN,
          allowed: 0,
        }),
      ),
    ),
  ]
}
