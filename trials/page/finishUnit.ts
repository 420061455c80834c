/** A small unit at the end of its build, as the trials of its release need it: put together but for what they are about. */
import type { Unit } from '@gripbook/engine'
import {
  boltPlaced,
  faceClosed,
  figureTaken,
  type Happening,
  handStarted,
  limitStated,
  partCameOut,
  passTorqued,
  runDown,
  witnessMarked,
} from '@gripbook/record'

export const HOLES = ['1', '2', '3', '4'] as const

export const cover: Unit = {
  gripbook: 'unit/1',
  name: 'Reducer of the winch',
  faces: [
    {
      id: 'cover',
      name: 'End cover',
      torque: 10,
      kinds: [
        { id: 'b1', thread: 'M6', length: 25, count: 3 },
        { id: 'b2', thread: 'M6', length: 40, count: 1 },
      ],
      holes: HOLES.map((id, i) => ({
        id,
        thread: 'M6',
        grip: id === '4' ? 30 : 15,
        asFound: id === '4' ? 'b1' : i === 0 ? 'b2' : 'b1',
      })),
    },
  ],
}

const at = (hole: string) => ({ face: 'cover', hole })
const wrench = { name: 'click wrench', number: 'W4', calibratedUntil: '2027-06-30' }

/** What came out and was read before teardown; nothing of it is back. */
export const takenApart: Happening[] = [
  figureTaken({ reading: 'End play', when: 'before', value: 0.62, plusMinus: 0.02, unit: 'mm' }),
  limitStated({ reading: 'End play', least: 0.1, most: 0.5, unit: 'mm', source: 'manual, 4-12' }),
  figureTaken({ reading: 'Coil resistance', when: 'before', value: 12.4, unit: 'Ω', conditions: '20 °C' }),
  limitStated({ reading: 'Coil resistance', least: 11, most: 14, unit: 'Ω', source: 'manual, 8-2' }),
  partCameOut({ part: 'seal-1', what: 'seal', name: 'Shaft seal', face: 'cover', wayRound: 'Lip inwards' }),
  partCameOut({ part: 'clip-1', what: 'clip', face: 'cover', hole: '2' }),
  partCameOut({ part: 'shim-1', what: 'shim', count: 2 }),
]

/** Every bolt through its rounds, the last one by feel, and the cover closed. */
export const putTogether: Happening[] = [
  ...HOLES.flatMap((hole) => [boltPlaced({ ...at(hole), kind: hole === '4' ? 'b2' : 'b1' }), handStarted(at(hole))]),
  ...HOLES.map((hole) => runDown(at(hole))),
  ...HOLES.map((hole) => passTorqued({ ...at(hole), pass: 1, final: false, torque: 5, tool: wrench })),
  ...HOLES.map((hole) =>
    passTorqued({
      ...at(hole),
      pass: 2,
      final: true,
      ...(hole === '3' ? { tool: { name: 'ratchet wrench', byFeel: true } } : { torque: 10, tool: wrench }),
    }),
  ),
  ...HOLES.map((hole) => witnessMarked(at(hole))),
]

export const closed: Happening = faceClosed({ face: 'cover' })
