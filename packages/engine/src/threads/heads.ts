import { readThread } from './readThread.ts'
import type { Thread } from './thread.ts'

export type HeadForm = 'hexagon' | 'hex flange' | 'socket cap'

/** A head as a product standard makes it, all in mm. Fields that the source does not give are absent. */
export type StandardHead = {
  standard: string
  /** The coarse thread of the row; fine threads of the same diameter have the same head. */
  thread: string
  form: HeadForm
  /** Across flats of the outside hexagon, for a socket or spanner. Absent on a socket cap. */
  acrossFlats?: number
  /** Across corners at least. */
  acrossCorners?: number
  /** Key size of the inside hexagon. */
  key?: number
  /** Diameter of a socket cap's head at most. */
  headDiameter?: number
  /** Head height at most. */
  height?: number
  /** Diameter of the flange at most. */
  flange?: number
  /** Outer diameter of the bearing face at least, dw. */
  bearing?: number
}

type Row = Omit<StandardHead, 'standard' | 'form'>
const rows = (standard: string, form: HeadForm, of: Row[]): StandardHead[] =>
  of.map((row) => ({ standard, form, ...row }))

const HEADS: readonly StandardHead[] = [
  // ISO 4014:2011, product grade A, as in a copy of the standard (M3 from memory); ISO 4017 has the same head
  ...rows('ISO 4014/4017', 'hexagon', [
    { thread: 'M3', acrossFlats: 5.5, bearing: 4.57 },
    { thread: 'M4', acrossFlats: 7, bearing: 5.88, acrossCorners: 7.66 },
    { thread: 'M5', acrossFlats: 8, bearing: 6.88, acrossCorners: 8.79, height: 3.65 },
    { thread: 'M6', acrossFlats: 10, bearing: 8.88, acrossCorners: 11.05, height: 4.15 },
    { thread: 'M8', acrossFlats: 13, bearing: 11.63, acrossCorners: 14.38, height: 5.45 },
    { thread: 'M10', acrossFlats: 16, bearing: 14.63, acrossCorners: 17.77, height: 6.58 },
    { thread: 'M12', acrossFlats: 18, bearing: 16.63, acrossCorners: 20.03, height: 7.68 },
    { thread: 'M14', acrossFlats: 21, bearing: 19.37, acrossCorners: 23.36, height: 8.98 },
    { thread: 'M16', acrossFlats: 24, bearing: 22.49, acrossCorners: 26.75, height: 10.18 },
  ]),
  // DIN 931/933 where it differs from ISO 4014/4017, supplier's copy
  ...rows('DIN 931/933', 'hexagon', [
    { thread: 'M10', acrossFlats: 17 },
    { thread: 'M12', acrossFlats: 19 },
    { thread: 'M14', acrossFlats: 22 },
  ]),
  // ISO 4762 = JIS B 1176, maker's technical page
  ...rows('ISO 4762', 'socket cap', [
    { thread: 'M5', headDiameter: 8.5, height: 5, key: 4, bearing: 8.03 },
    { thread: 'M6', headDiameter: 10, height: 6, key: 5, bearing: 9.38 },
    { thread: 'M8', headDiameter: 13, height: 8, key: 6, bearing: 12.33 },
    { thread: 'M10', headDiameter: 16, height: 10, key: 8, bearing: 15.33 },
    { thread: 'M12', headDiameter: 18, height: 12, key: 10, bearing: 17.23 },
    { thread: 'M14', headDiameter: 21, height: 14, key: 12, bearing: 20.17 },
    { thread: 'M16', headDiameter: 24, height: 16, key: 14, bearing: 23.17 },
  ]),
  // EN 1665, catalogue of standards
  ...rows('EN 1665', 'hex flange', [
    { thread: 'M5', acrossFlats: 8, flange: 11.8, bearing: 9.8 },
    { thread: 'M6', acrossFlats: 10, flange: 14.2, bearing: 12.2 },
    { thread: 'M8', acrossFlats: 13, flange: 18, bearing: 15.8 },
    { thread: 'M10', acrossFlats: 16, flange: 22.3, bearing: 19.6 },
    { thread: 'M12', acrossFlats: 18, flange: 26.6, bearing: 23.8 },
    { thread: 'M16', acrossFlats: 24, flange: 35, bearing: 31.9 },
    { thread: 'M20', acrossFlats: 30, flange: 43, bearing: 39.9 },
  ]),
  // JIS B 1189 = ISO 4162 small series, catalogue of standards
  ...rows('JIS B 1189 / ISO 4162 small series', 'hex flange', [
    { thread: 'M5', acrossFlats: 7, flange: 11.4, bearing: 9.4 },
    { thread: 'M6', acrossFlats: 8, flange: 13.6, bearing: 11.6 },
    { thread: 'M8', acrossFlats: 10, flange: 17, bearing: 14.9 },
    { thread: 'M10', acrossFlats: 13, flange: 20.8, bearing: 18.7 },
    { thread: 'M12', acrossFlats: 15, flange: 24.7, bearing: 22.5 },
    { thread: 'M14', acrossFlats: 18, flange: 28.6, bearing: 26.4 },
  ]),
  // JIS B 1180 annex, trade page on the standard; the ordinary M8 and M16 are as ISO 4014
  ...rows('JIS B 1180 annex, ordinary', 'hexagon', [
    { thread: 'M8', acrossFlats: 13 },
    { thread: 'M10', acrossFlats: 17 },
    { thread: 'M12', acrossFlats: 19 },
    { thread: 'M14', acrossFlats: 22 },
    { thread: 'M16', acrossFlats: 24 },
  ]),
  ...rows('JIS B 1180 annex, small', 'hexagon', [
    { thread: 'M8', acrossFlats: 12 },
    { thread: 'M10', acrossFlats: 14 },
    { thread: 'M12', acrossFlats: 17 },
    { thread: 'M14', acrossFlats: 19 },
    { thread: 'M16', acrossFlats: 22 },
  ]),
  // ASME B18.2.1 hex cap screws (from memory): the washer face is as wide as the flats at most and a tenth less at least
  ...rows(
    'ASME B18.2.1',
    'hexagon',
    (
      [
        ['1/4-20 UNC', 7 / 16],
        ['5/16-18 UNC', 1 / 2],
        ['3/8-16 UNC', 9 / 16],
        ['7/16-14 UNC', 5 / 8],
        ['1/2-13 UNC', 3 / 4],
        ['9/16-12 UNC', 13 / 16],
        ['5/8-11 UNC', 15 / 16],
        ['3/4-10 UNC', 9 / 8],
      ] as const
    ).map(([thread, inches]) => ({ thread, acrossFlats: inches * 25.4, bearing: 0.9 * inches * 25.4 })),
  ),
]

const diameterOf = (head: StandardHead): number => {
  const read = readThread(head.thread)
  return read.ok ? read.value.diameter : Number.NaN
}
const DIAMETERS: readonly number[] = HEADS.map(diameterOf)

/** The heads that product standards make for bolts of this thread, mm, the plain hexagon of the main standard first. */
export function headsFor({ diameter }: Thread): StandardHead[] {
  return HEADS.filter((_, i) => Math.abs((DIAMETERS[i] as number) - diameter) < 1e-9)
}

/** Play in mm by which a socket and the flats it fits may differ from their nominal size. */
const SOCKET_PLAY = 0.15

/**
 * The heads that a socket or spanner of `acrossFlats` mm fits, smallest thread first. One socket fits several threads, so the socket
 * alone never names the thread: 10 mm is M6 (ISO 4014, EN 1665) and M8 (small series flange).
 */
export function socketsFor(acrossFlats: number): StandardHead[] {
  return HEADS.map((head, i) => ({ head, diameter: DIAMETERS[i] as number }))
    .filter(({ head }) => head.acrossFlats !== undefined && Math.abs(head.acrossFlats - acrossFlats) <= SOCKET_PLAY)
    .sort((a, b) => a.diameter - b.diameter)
    .map(({ head }) => head)
}
