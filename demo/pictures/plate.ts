/** The pump cover as a plate on its gasket, in millimetres of the unit file, and the order of an invented manual. */
type Point = [number, number]

const MIDDLE: Point = [75, 75]
const HOLES = 8

const at = (radius: number, degrees: number): Point => {
  const turned = (degrees * Math.PI) / 180
  const tenth = (value: number) => Math.round(value * 10) / 10
  return [tenth(MIDDLE[0] + radius * Math.cos(turned)), tenth(MIDDLE[1] + radius * Math.sin(turned))]
}

const each = (count: number) => Array.from({ length: count }, (_, i) => i)

export function pumpCover() {
  return {
    cover: {
      // A lobe round every hole, drawn in between.
      outline: each(HOLES).flatMap((i) => {
        const hole = (360 / HOLES) * i
        return [at(73, hole - 8), at(73, hole + 8), at(58, hole + 180 / HOLES)]
      }),
      thickness: 10,
      young: 70_000,
      poisson: 0.33,
      lines: [{ name: 'gear pocket', from: at(34, 180), to: at(34, 0) }],
    },
    bed: {
      // Paper, half a millimetre: twice as stiff as one of a millimetre.
      stiffness: { atLeast: 30, atMost: 56 },
      hollows: [each(16).map((i) => at(40, (360 / 16) * i))],
    },
    snug: true,
    order: [0.5, 1].map((share) => ({ share, sequence: ['1', '5', '3', '7', '2', '6', '4', '8'] })),
  }
}
