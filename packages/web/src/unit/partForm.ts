/** Parts other than bolts: the list by face, and the entries that a form becomes. */
import { type FoldedUnit, type Happening, PART_SORTS, partCameOut, undone } from '@gripbook/record'
import { given, oneLine } from '../units/texts.ts'
import { standingOf } from './standing.ts'

type Body = Parameters<typeof partCameOut>[0]
export type What = Body['what']

export type Part = Partial<Record<(typeof TEXTS)[number], string>> & {
  id: string
  what: What
  count?: number
  photograph?: string
  /** Where it is now: 'out' on the bench, 'in' the unit again, 'replaced', 'written off'. */
  fate: string
}

const TEXTS = ['name', 'face', 'hole', 'place', 'wayRound', 'condition'] as const

export type PartForm = Record<(typeof TEXTS)[number] | 'count', string> & {
  what: What | null
  photograph: string | null
}

/** The next part starts where the last one was: nobody goes back and forth between faces. */
export function emptyForm(face: string): PartForm {
  return {
    what: null,
    photograph: null,
    name: '',
    face,
    hole: '',
    place: '',
    wayRound: '',
    condition: '',
    count: '',
  }
}

export function formOf(part: Part): PartForm {
  const texts = Object.fromEntries(TEXTS.map((field) => [field, part[field] ?? ''])) as Record<
    (typeof TEXTS)[number],
    string
  >
  return {
    ...texts,
    what: part.what,
    photograph: part.photograph ?? null,
    count: part.count === undefined ? '' : String(part.count),
  }
}

/** A whole number from 1 to 100,000, in the digits of any keyboard; null when it is something else. */
export function countOf(text: string): number | null | undefined {
  const plain = text.normalize('NFKC').trim()
  if (plain === '') return undefined
  const count = /^\d{1,6}$/.test(plain) ? Number(plain) : 0
  return count >= 1 && count <= 100_000 ? count : null
}

export function bodyOf(part: string, form: PartForm & { what: What }): Body {
  const count = countOf(form.count)
  return {
    part,
    what: form.what,
    ...Object.assign({}, ...TEXTS.map((field) => given(field, oneLine(form[field])))),
    ...(count === undefined || count === null ? {} : { count }),
    ...(form.photograph === null ? {} : { photograph: form.photograph }),
  }
}

/**
 * The entries that change a part. What is filled in is said once more; where something was emptied, the entries before it are undone, since an entry of a
 * part can say what is so and not what is unknown.
 */
export function changePart(folded: FoldedUnit, part: Part, form: PartForm & { what: What }): Happening[] {
  const before = bodyOf(part.id, { ...formOf(part), what: part.what })
  const after = bodyOf(part.id, form)
  if (JSON.stringify(before) === JSON.stringify(after)) return []
  const emptied = Object.keys(before).some((field) => !(field in after))
  return [...(emptied ? strikeOutPart(folded, part.id) : []), partCameOut(after), ...fateOf(folded, part)]
}

const FATES = ['part-went-in', 'part-replaced', 'part-written-off']

/** An entry that it came out says that it is out. What became of it since is said once more behind it. */
function fateOf(folded: FoldedUnit, part: Part): Happening[] {
  if (part.fate === 'out') return []
  const last = standingOf(folded).findLast(({ type, body }) => FATES.includes(type) && body.part === part.id)
  return last === undefined ? [] : [{ type: last.type, version: last.version, body: last.body }]
}

/** Undoes all that says that the part came out. */
export function strikeOutPart(folded: FoldedUnit, part: string): Happening[] {
  return standingOf(folded)
    .filter(({ type, body }) => type === 'part-came-out' && body.part === part)
    .map(({ id }) => undone({ event: id }))
    .reverse()
}

/** The parts of a unit as they stand; what nobody said came out (only a photograph of it, say) is none. */
export function partsOf({ things }: FoldedUnit): Part[] {
  return Object.entries(things.part).flatMap(([id, fields]) => {
    const text = (field: string) => {
      const value = fields[field]?.value
      return typeof value === 'string' ? value : undefined
    }
    const what = PART_SORTS.find((one) => one === text('what'))
    if (what === undefined) return []
    const count = fields.count?.value
    return [
      {
        id,
        what,
        fate: text('fate') ?? 'out',
        ...Object.assign({}, ...TEXTS.map((field) => given(field, text(field)))),
        ...given('photograph', text('photograph')),
        ...(typeof count === 'number' ? { count } : {}),
      },
    ]
  })
}

/** By face, in the order of the faces; parts of no face, or of one that was struck out, last. */
export function byFace(
  parts: readonly Part[],
  faces: readonly { id: string }[],
): { face: string | null; parts: Part[] }[] {
  const known = new Set(faces.map(({ id }) => id))
  const groups = faces.map(({ id }) => ({ face: id as string | null, parts: parts.filter(({ face }) => face === id) }))
  const others = parts.filter(({ face }) => face === undefined || !known.has(face))
  return [...groups, { face: null, parts: others }].filter((group) => group.parts.length > 0)
}
