import type { Place } from './shapes.ts'

/** How a face lies in its picture. `at` of the unit file is in millimetres, x to the right and y upwards; pixels count downwards. */
export type Frame = {
  readonly file: string
  readonly width: number
  readonly height: number
  readonly pixelsPerMillimetre: number
  /** The face's millimetres at the upper left corner of the picture. */
  readonly left: number
  readonly top: number
}

export const FRAMES: readonly (Frame & { readonly face: string })[] = [
  {
    face: 'control-block',
    file: 'control-block.webp',
    width: 1600,
    height: 1200,
    pixelsPerMillimetre: 7.2,
    left: -11,
    top: 152,
  },
  {
    face: 'pump-cover',
    file: 'pump-cover.webp',
    width: 1600,
    height: 1440,
    pixelsPerMillimetre: 7.8,
    left: -27.5,
    top: 167,
  },
  {
    face: 'bell-housing',
    file: 'bell-housing.webp',
    width: 1600,
    height: 1560,
    pixelsPerMillimetre: 3.7,
    left: -36,
    top: 391,
  },
]

/** Close pictures of parts and signs; their millimetres start in the middle. */
export const DETAILS = {
  bracket: { file: 'bracket.webp', width: 800, height: 600, pixelsPerMillimetre: 7.6, left: -52.6, top: 39.5 },
  connector: { file: 'connector.webp', width: 800, height: 600, pixelsPerMillimetre: 8.4, left: -47.6, top: 35.7 },
  sealant: { file: 'sealant.webp', width: 800, height: 600, pixelsPerMillimetre: 9.2, left: -43.5, top: 32.6 },
} as const satisfies Record<string, Frame>

/** The pixel at which a point of the joint face is seen, to a tenth. */
export function mark(frame: Frame, [x, y]: Place): [number, number] {
  const tenth = (value: number) => Math.round(value * 10) / 10
  return [tenth((x - frame.left) * frame.pixelsPerMillimetre), tenth((frame.top - y) * frame.pixelsPerMillimetre)]
}

/** The middle of the picture, in the face's millimetres. */
export function middle(frame: Frame): [number, number] {
  return [
    frame.left + frame.width / frame.pixelsPerMillimetre / 2,
    frame.top - frame.height / frame.pixelsPerMillimetre / 2,
  ]
}
