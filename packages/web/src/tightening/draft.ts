/** What a face is told for its tightening, as it stands while it is entered: drawn corners and typed texts, until it is kept. */
import {
  coverOf,
  type Face,
  intervalOf,
  type LengthUnit,
  type Point,
  type Quantity,
  readLength,
  type StatedCover,
} from '@gripbook/engine'
import type { faceDescribed } from '@gripbook/record'
import { loadOf, numberOf, rangeOf, shareOf } from './figures.ts'
import {
  BED_STIFFNESS,
  BEDS,
  type BedName,
  ELASTIC,
  type Material,
  materialOf,
  ROUGHNESS,
  type Surface,
  surfaceOf,
} from './materials.ts'
import { type PassDraft, readSequence, type SequenceFault, writeSequence } from './sequence.ts'

export type Draft = {
  outline: Point[]
  openings: Point[][]
  hollows: Point[][]
  regions: { corners: Point[]; thickness: string }[]
  lines: { corners: Point[]; name: string }[]
  thickness: string
  material: Material | 'own'
  young: string
  poisson: string
  bed: BedName | 'own' | null
  stiffness: string
  snug: boolean
  clamp: string
  boltStiffness: string
  surface: Surface | null
  passes: PassDraft[]
}

export type DraftFault = { at: FaultPlace; index?: number } & (
  | {
      code:
        | 'no corners'
        | 'no figure'
        | 'no bed'
        | 'no poisson'
        | 'no range'
        | 'no load'
        | 'no share'
        | 'share falls'
        | 'no name'
        | 'name twice'
        | 'no holes'
    }
  | { code: 'sequence'; fault: SequenceFault }
)

export type FaultPlace =
  | 'outline'
  | 'openings'
  | 'hollows'
  | 'regions'
  | 'lines'
  | 'thickness'
  | 'young'
  | 'poisson'
  | 'bed'
  | 'stiffness'
  | 'clamp'
  | 'boltStiffness'
  | 'passes'
  | 'holes'

export type Body = Parameters<typeof faceDescribed>[0]
type Told = Pick<Face, 'cover' | 'bed' | 'snug' | 'clamp' | 'boltStiffness' | 'embedment' | 'order'>

const TOLD = ['cover', 'bed', 'snug', 'clamp', 'boltStiffness', 'embedment', 'order'] as const

export function draftOf(face: Face, unit: LengthUnit): Draft {
  const { bed, snug, clamp, boltStiffness, embedment, order } = face
  const cover = face.cover === undefined ? undefined : coverOf(face)
  const material = cover?.young === undefined ? 'aluminium' : (materialOf(cover.young, cover.poisson) ?? 'own')
  return {
    outline: cover?.outline ?? [],
    openings: cover?.openings ?? [],
    hollows: bed?.hollows ?? [],
    regions: (cover?.regions ?? []).map(({ outline, thickness }) => ({
      corners: outline,
      thickness: lengthText(thickness, unit),
    })),
    lines: (cover?.lines ?? []).map(({ name, from, to }) => ({ corners: [from, to], name })),
    thickness: cover === undefined ? '' : lengthText(cover.thickness, unit),
    material,
    young: material === 'own' ? String(cover?.young ?? '') : '',
    poisson: material === 'own' ? String(cover?.poisson ?? '') : '',
    bed: bed === undefined ? null : (bedOf(bed.stiffness) ?? 'own'),
    stiffness: bed === undefined || bedOf(bed.stiffness) !== null ? '' : rangeText(bed.stiffness),
    snug: snug ?? true,
    clamp: clamp === undefined ? '' : String(clamp),
    boltStiffness: boltStiffness === undefined ? '' : String(boltStiffness),
    surface: embedment === undefined ? null : surfaceOf(embedment.roughness),
    passes: (order ?? []).map(({ share, sequence }) => ({
      share: String(Math.round(share * 1e6) / 1e4),
      sequence: writeSequence(sequence),
    })),
  }
}

export type ReadSetup = { ok: true; told: Told } | { ok: false; faults: [DraftFault, ...DraftFault[]] }

/** What the face is told by the draft; everything wrong with it at once, in the order of the form. */
export function readSetup(draft: Draft, face: Face, unit: LengthUnit): ReadSetup {
  const faults: DraftFault[] = []
  const holes = face.holes.map(({ id }) => id)
  if (draft.outline.length < 3) faults.push({ at: 'outline', code: 'no corners' })
  const thickness = lengthOf(draft.thickness, unit)
  if (thickness === null) faults.push({ at: 'thickness', code: 'no figure' })
  const elastic = draft.material === 'own' ? ownElastic(draft, faults) : ELASTIC[draft.material]
  const stiffness = bedStiffness(draft, faults)
  const areas = (at: 'openings' | 'hollows') =>
    draft[at].forEach(({ length }, index) => {
      if (length < 3) faults.push({ at, index, code: 'no corners' })
    })
  areas('openings')
  areas('hollows')
  const before = draftOf(face, unit)
  const regions = draft.regions.map(({ corners, thickness: text }, index) => {
    const its = lengthOf(text, unit)
    if (corners.length < 3) faults.push({ at: 'regions', index, code: 'no corners' })
    if (its === null) faults.push({ at: 'regions', index, code: 'no figure' })
    const was = before.regions.findIndex((one) => one.thickness === text && same(one.corners, corners))
    return { outline: corners, thickness: face.cover?.regions?.[was]?.thickness ?? its ?? 0 }
  })
  const lines = readLines(draft, faults)
  const clamp = optional(draft.clamp, loadOf, () => faults.push({ at: 'clamp', code: 'no load' }))
  const bolts = optional(draft.boltStiffness, numberOf, () => faults.push({ at: 'boltStiffness', code: 'no figure' }))
  const order = readOrder(draft, holes, faults)
  const [first, ...more] = faults
  if (first !== undefined) return { ok: false, faults: [first, ...more] }
  // A range of which only the middle is shown stays what it is until another figure is typed.
  const asBefore = draft.thickness === before.thickness ? face.cover?.thickness : undefined
  const cover: StatedCover = {
    outline: draft.outline,
    ...(draft.openings.length === 0 ? {} : { openings: draft.openings }),
    thickness: asBefore ?? thickness!,
    ...(regions.length === 0 ? {} : { regions }),
    ...elastic,
    ...(lines.length === 0 ? {} : { lines }),
  }
  return {
    ok: true,
    told: {
      cover,
      bed: { stiffness: stiffness!, ...(draft.hollows.length === 0 ? {} : { hollows: draft.hollows }) },
      snug: draft.snug,
      ...(clamp === undefined ? {} : { clamp }),
      ...(bolts === undefined ? {} : { boltStiffness: bolts }),
      ...(draft.surface === null ? {} : { embedment: embedmentOf(draft.surface, face) }),
      ...(order.length === 0 ? {} : { order }),
    },
  }
}

/** What has to be written so that the face says what the draft says; null where it does already. */
export function changesIn(face: Face, told: Told): Body | null {
  const changed = TOLD.filter((name) => told[name] !== undefined && !same(told[name], face[name]))
  const unknown = TOLD.filter((name) => told[name] === undefined && face[name] !== undefined)
  if (changed.length + unknown.length === 0) return null
  const fields = Object.fromEntries(changed.map((name) => [name, told[name]]))
  return { face: face.id, ...fields, ...(unknown.length === 0 ? {} : { unknown }) } as Body
}

function ownElastic(draft: Draft, faults: DraftFault[]): { young: number; poisson: number } {
  const young = numberOf(draft.young)
  const poisson = draft.poisson.trim() === '0' ? 0 : numberOf(draft.poisson)
  if (young === null) faults.push({ at: 'young', code: 'no figure' })
  if (poisson === null || poisson >= 0.5) faults.push({ at: 'poisson', code: 'no poisson' })
  return { young: young ?? 0, poisson: poisson ?? 0 }
}

function bedStiffness({ bed, stiffness }: Draft, faults: DraftFault[]): Quantity | null {
  if (bed === null) faults.push({ at: 'bed', code: 'no bed' })
  if (bed !== 'own') return bed === null ? null : rangeOfBed(bed)
  const read = rangeOf(stiffness)
  if (read === null) faults.push({ at: 'stiffness', code: 'no range' })
  return read
}

function readLines({ lines }: Draft, faults: DraftFault[]): NonNullable<StatedCover['lines']> {
  const names = lines.map(({ name }) => name.trim())
  return lines.map(({ corners }, index) => {
    const name = names[index]!
    const [from, to] = corners
    if (from === undefined || to === undefined) faults.push({ at: 'lines', index, code: 'no corners' })
    if (name === '') faults.push({ at: 'lines', index, code: 'no name' })
    else if (names.indexOf(name) < index) faults.push({ at: 'lines', index, code: 'name twice' })
    return { name, from: from ?? [0, 0], to: to ?? [0, 0] }
  })
}

function readOrder({ passes }: Draft, holes: readonly string[], faults: DraftFault[]): NonNullable<Face['order']> {
  let before = 0
  return passes.map((pass, index) => {
    const share = shareOf(pass.share)
    const { holes: sequence, fault } = readSequence(pass.sequence, holes)
    if (share === null) faults.push({ at: 'passes', index, code: 'no share' })
    else if (share < before) faults.push({ at: 'passes', index, code: 'share falls' })
    if (fault !== null) faults.push({ at: 'passes', index, code: 'sequence', fault })
    else if (sequence.length === 0) faults.push({ at: 'passes', index, code: 'no holes' })
    before = share ?? before
    return { share: share ?? 0, sequence }
  })
}

/** An empty text is not stated. */
function optional(text: string, read: (text: string) => number | null, faulty: () => void): number | undefined {
  if (text.trim() === '') return undefined
  const value = read(text)
  if (value === null) faulty()
  return value ?? undefined
}

/** The surface that was shown stays as exact as it was stated. */
function embedmentOf(surface: Surface, { embedment }: Face): NonNullable<Face['embedment']> {
  const kept = embedment !== undefined && surfaceOf(embedment.roughness) === surface
  return kept ? embedment : { roughness: ROUGHNESS[surface] }
}

/** mm above zero of a length as it was typed; the middle of a range. */
export function lengthOf(text: string, unit: LengthUnit): number | null {
  const read = readLength(text, unit)
  if (!read.ok) return null
  const { lo, hi } = intervalOf(read.value)
  const middle = Math.round(((lo + hi) / 2) * 1e4) / 1e4
  return Number.isFinite(middle) && middle > 0 ? middle : null
}

/** A length in mm as one would type it: with its unit where the page speaks inches. */
export function lengthText(millimetres: number, unit: LengthUnit): string {
  const figure = String(Math.round(millimetres * 1e6) / 1e6)
  return unit === 'mm' ? figure : `${figure} mm`
}

function rangeOfBed(bed: BedName): { atLeast: number; atMost: number } {
  const { atLeast, atMost } = BED_STIFFNESS[bed]
  return { atLeast, atMost }
}

function bedOf(stiffness: Quantity): BedName | null {
  return BEDS.find((name) => same(rangeOfBed(name), stiffness)) ?? null
}

function rangeText(stiffness: Quantity): string {
  const { lo, hi } = intervalOf(stiffness)
  return lo === hi ? String(lo) : `${lo} to ${hi}`
}

/** Equal as JSON, whatever the order of the fields. */
function same(a: unknown, b: unknown): boolean {
  return JSON.stringify(sorted(a)) === JSON.stringify(sorted(b))
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted)
  if (typeof value !== 'object' || value === null) return value
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))
  return Object.fromEntries(entries.map(([name, inner]) => [name, sorted(inner)]))
}
