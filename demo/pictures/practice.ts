import { DETAILS, FRAMES, type Frame, mark } from './frames.ts'
import { pumpCover } from './plate.ts'
import type { Unit } from './unit.ts'

/** What the page shows beside the unit file: where its pictures are, where the holes lie in them, parts that came off, signs. */
export type Practice = ReturnType<typeof practice>

export function practice(unit: Unit) {
  return {
    note: 'Invented: the pictures are drawn by drawPictures.ts, no such unit exists. Marks are pixels from the upper left corner.',
    model: 'Yard loader, powershift gearbox with three gears',
    complaint: 'Second gear slips under load, worse when warm',
    pictures: Object.fromEntries(
      FRAMES.map((frame) => {
        const holes = unit.faces.find(({ id }) => id === frame.face)?.holes ?? []
        const marks = Object.fromEntries(holes.map(({ id, at }) => [id, mark(frame, at)]))
        return [frame.face, { ...sized(frame), pixelsPerMillimetre: frame.pixelsPerMillimetre, marks }]
      }),
    ),
    tightening: { 'pump-cover': pumpCover() },
    parts: [
      {
        part: 'bracket-1',
        what: 'bracket',
        name: 'Bracket of the speed sensor',
        face: 'control-block',
        hole: '2',
        thickness: 3,
        wayRound: 'Lip upwards and towards the rim, the round hole on the bolt',
        condition: 'Straight, a little rust, the hole is not worn',
        ...sized(DETAILS.bracket),
      },
      {
        part: 'connector-1',
        what: 'connector',
        name: 'Plug of the valves, four wires',
        face: 'control-block',
        wayRound: 'Latch upwards, wires away from the filter',
        condition: 'Latch whole, all three lips of the seal there',
        ...sized(DETAILS.connector),
      },
    ],
    signs: [
      {
        face: 'bell-housing',
        sign: 'Sealant of two colours on the rim',
        says: 'It was opened before: red over rests of grey',
        ...sized(DETAILS.sealant),
      },
    ],
  }
}

function sized({ file, width, height }: Frame) {
  return { file, width, height }
}
