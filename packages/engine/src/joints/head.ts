import { clearanceDiameter } from '../threads/clearanceHoles.ts'
import { type HeadForm, headsFor } from '../threads/heads.ts'
import type { Thread } from '../threads/thread.ts'

/** The ring on which a head rests, mm. */
export type BearingRing = {
  /** Outer diameter of the bearing face at least, dw. */
  outer: number
  /** Diameter of the hole under it, dh. */
  inner: number
  /** Mean diameter at which the head rubs, DKm = (dw + dh)/2. */
  friction: number
  /** Area in mm² that carries the clamp load. */
  area: number
  /** Which head this is, and what was assumed. */
  head: string
  acrossFlats?: number
}

/** What is known of a head: its form, the socket that fits it in mm, or the name of its standard. All absent: the plain hexagon is taken. */
export type HeadWanted = { form?: string; acrossFlats?: number; standard?: string }

const FORMS: Readonly<Record<string, HeadForm>> = {
  hex: 'hexagon',
  hexagon: 'hexagon',
  'hex flange': 'hex flange',
  flange: 'hex flange',
  'small flange': 'hex flange',
  socket: 'socket cap',
  'socket cap': 'socket cap',
  'cap screw': 'socket cap',
}

/** Forms that can be written for a head. */
export const HEAD_FORMS: readonly string[] = Object.keys(FORMS)

/** Width across flats at most 0.15 mm from what a standard says counts as that head. */
const FLATS_PLAY = 0.15
/** dw of a plain hexagon over its width across flats, where the standard's own figure is missing (mean of ISO 4014 M6 to M12, rounded down). */
const BEARING_PER_FLATS = 0.89

const isForm = (form: string | undefined): boolean => form === undefined || form.trim().toLowerCase() in FORMS

/**
 * The bearing ring under the head of a bolt: dw by the product standard that fits what is known of the head, dh the medium clearance hole of ISO 273.
 * With nothing known the plain hexagon of the thread's main standard. Undefined when the form is no form of head or no standard makes that
 * width across flats for this thread and no form can carry it.
 * @source ISO 4014, ISO 4762, EN 1665, JIS B 1189, ISO 273 by way of threads/heads.ts; DKm as VDI 2230
 */
export function bearingRing(thread: Thread, wanted: HeadWanted = {}): BearingRing | undefined {
  if (!isForm(wanted.form)) return undefined
  const written = wanted.form?.trim().toLowerCase()
  const form = written !== undefined && Object.hasOwn(FORMS, written) ? FORMS[written] : undefined
  const small = written === 'small flange'
  const found = headsFor(thread).find(
    (head) =>
      (form === undefined || head.form === form) &&
      (!small || head.standard.includes('small')) &&
      (wanted.standard === undefined || head.standard.toLowerCase().includes(wanted.standard.trim().toLowerCase())) &&
      (wanted.acrossFlats === undefined ||
        (head.acrossFlats !== undefined && Math.abs(head.acrossFlats - wanted.acrossFlats) <= FLATS_PLAY)),
  )
  const inner = clearanceDiameter(thread)
  const flats = found?.acrossFlats ?? wanted.acrossFlats
  if (found)
    return ring(
      found.bearing ?? BEARING_PER_FLATS * (flats as number),
      inner,
      `${found.form}, ${found.standard}`,
      flats,
    )
  if (wanted.standard !== undefined || small) return undefined
  if (flats !== undefined) {
    // measured flats that no standard here makes for this thread: a plain hexagon of that size, if it covers its own hole
    const outer = BEARING_PER_FLATS * flats
    return outer > inner * 1.05
      ? ring(outer, inner, `plain hexagon of ${flats} mm, no standard found for it`, flats)
      : undefined
  }
  return ring(
    BEARING_PER_FLATS * 1.6 * thread.diameter,
    inner,
    'no standard head known for this thread: counted as a hexagon of 1.6 d',
  )
}

function ring(outer: number, inner: number, head: string, acrossFlats?: number): BearingRing {
  const area = (Math.PI / 4) * (outer ** 2 - inner ** 2)
  return {
    outer,
    inner,
    friction: (outer + inner) / 2,
    area,
    head,
    ...(acrossFlats === undefined ? {} : { acrossFlats }),
  }
}
