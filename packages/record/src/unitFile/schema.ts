/**
 * The unit file's shape, once: what is read is checked against it, the published JSON Schema is made from it, and its type is held equal to
 * the engine's `Unit` (schema.test.ts). The order of the fields here is the order in which they are written.
 */
import {
  LENGTH_UNITS,
  type Material,
  type Quantity,
  TORQUE_UNITS,
  type Trial,
  type UnitName,
  type Washer,
} from '@gripbook/engine'
import * as z from 'zod/mini'
import {
  above0,
  from0,
  idText,
  isObject,
  maybe,
  note,
  oneOf,
  type Schema,
  shortText,
  text,
  toolNames,
} from './fields.ts'
import { benchTool, job } from './jobSchema.ts'
import { LIMITS } from './limits.ts'
import { endsInOrder, figuresAgree, hasLength, isThread } from './localChecks.ts'
import { PART_SORTS } from './partSorts.ts'

const isList = Array.isArray
const has = (value: unknown, ...names: string[]): boolean =>
  isObject(value) && names.some((name) => Object.hasOwn(value, name))

const wholeFrom = (least: number, most: number) => z.number().check(z.int(), z.gte(least), z.lte(most))

type QuantityRules = {
  id: string
  title: string
  units: readonly UnitName[] | null
  most: number
  /** Without it nothing can be computed: above 0, and of ends both. */
  needed?: boolean
}

/** A quantity: a plain number, a value with its tolerance, a nominal size, or ends. Negative figures are refused, crossed ends too. */
function quantity({ id, title, units, most, needed = false }: QuantityRules): Schema<Quantity> {
  const figure = needed ? above0(most) : from0(most)
  const end = needed ? figure : z.exactOptional(figure)
  const unit = units === null ? {} : { unit: z.exactOptional(z.enum([...units] as [UnitName, ...UnitName[]])) }
  const plain = { value: figure, plusMinus: z.exactOptional(from0(most)), ...unit }
  const value = z
    .strictObject(units === null ? plain : { ...plain, also: z.exactOptional(z.strictObject(plain)) })
    .check(z.refine(figuresAgree, { params: { code: 'two-figures-disagree' } }))
  const nominal = z.strictObject({ nominal: above0(most), ...unit })
  const ends = z.strictObject({ atLeast: end, atMost: end, ...unit }).check(
    z.refine((given) => has(given, 'atLeast', 'atMost'), { params: { code: 'quantity-empty' } }),
    z.refine(endsInOrder, { params: { code: 'ends-crossed' } }),
  )
  const choose = (given: unknown): Schema | undefined => {
    if (typeof given === 'number') return figure
    if (!isObject(given)) return undefined
    const kinds = [has(given, 'value'), has(given, 'nominal'), has(given, 'atLeast', 'atMost')]
    if (kinds.filter(Boolean).length > 1) return undefined
    return kinds[0] || has(given, 'plusMinus', 'also') ? value : kinds[1] ? nominal : ends
  }
  return oneOf('quantity', [figure, value, nominal, ends], choose, { id, title })
}

const length = quantity({
  id: 'length',
  title: 'A length, in mm unless it names another unit',
  units: LENGTH_UNITS,
  most: LIMITS.length,
})
const thickness = quantity({
  id: 'thickness',
  title: 'A thickness, in mm unless it names another unit; of a range the middle is taken',
  units: LENGTH_UNITS,
  most: LIMITS.length,
  needed: true,
})
const torque = quantity({
  id: 'torque',
  title: 'A torque, in N·m unless it names another unit',
  units: TORQUE_UNITS,
  most: LIMITS.torque,
})
const stiffness = quantity({
  id: 'bedStiffness',
  title: 'Stiffness of the seat per area, N/mm³',
  units: null,
  most: LIMITS.stiffness,
})

const threadName = text(LIMITS.threadText).check(z.refine(isThread, { params: { code: 'not-a-thread' } }))
const threadList = z.array(threadName).check(z.minLength(1), z.maxLength(LIMITS.words))
const thread = oneOf<string | string[]>(
  'thread',
  [threadName, threadList],
  (given) => (typeof given === 'string' ? threadName : isList(given) ? threadList : undefined),
  { id: 'thread', title: 'A thread such as M6, M10×1.25 or 1/4-20 UNC, or a list of candidates' },
)

const namedMaterial = z.strictObject({
  name: shortText,
  shearStrength: maybe(above0(1e6), 'Shear strength, MPa'),
  limitPressure: maybe(above0(1e6), 'Limiting pressure under the head, MPa'),
})
const material = oneOf<Material>(
  'material',
  [shortText, namedMaterial],
  (given) => (typeof given === 'string' ? shortText : isObject(given) ? namedMaterial : undefined),
  { id: 'material', title: 'A material by name, or with its own figures' },
)

const heldWasher = z.strictObject({ thickness: length, captive: maybe(z.boolean(), 'It cannot come off the bolt') })
const washer = oneOf<Washer>(
  'washer',
  [length, heldWasher],
  (given) =>
    isObject(given) && !has(given, 'value', 'plusMinus', 'also', 'nominal', 'atLeast', 'atMost') ? heldWasher : length,
  { id: 'washer', title: 'Thickness of the washer under the head, or that and whether it is captive' },
)

const words = z.array(shortText).check(z.maxLength(LIMITS.words))
const place = z.tuple([
  z.number().check(z.gte(-LIMITS.length), z.lte(LIMITS.length)),
  z.number().check(z.gte(-LIMITS.length), z.lte(LIMITS.length)),
])
const outline = z.array(place).check(z.minLength(3), z.maxLength(LIMITS.points))
const outlines = z.array(outline).check(z.maxLength(LIMITS.outlines))
const history = z.enum(['never opened', 'unknown', 'opened before'])

const head = z.strictObject({
  form: shortText.check(z.describe('Form of the head, such as "hex flange", "socket" or "stud"')),
  acrossFlats: maybe(length, 'Width across the flats'),
})

const hole = z.strictObject({
  id: idText.check(z.describe('Number or name of the hole, as text; once in its face')),
  thread,
  ending: maybe(z.enum(['blind', 'through']), 'Blind unless stated'),
  at: maybe(place, 'Where the hole stands on the face, x and y in mm'),
  grip: maybe(length, 'Length of material that the bolt clamps'),
  bracket: maybe(length, 'Thickness of a bracket under the head; 0 unless stated'),
  gasket: maybe(length, 'Thickness of the gasket at this hole; the face’s unless stated'),
  mouth: maybe(length, 'Depth from the joint face to the first full thread; 0 unless stated'),
  threadDepth: maybe(length, 'Length of full thread in the hole; in a through hole mouth and this make up the wall'),
  bottomDepth: maybe(length, 'Depth from the joint face to the bottom of a blind hole'),
  behind: maybe(length, 'Room for the tip behind a through hole'),
  material: maybe(material, 'Material with the thread in it; the face’s unless stated'),
  needs: maybe(words, 'Features that the bolt must have, such as "stud end"'),
  minimumEngagement: maybe(length, 'Least thread engagement; the face’s unless stated'),
  asFound: maybe(idText, 'Kind that sat here when the face was opened, or "none"'),
  torque: maybe(torque, 'Torque of this hole; the face’s unless stated'),
  visit: maybe(wholeFrom(1, LIMITS.count), 'Visit in which this hole is closed'),
  locates: maybe(z.boolean(), 'Dowel, reamed or shouldered: started first'),
  boltStiffness: maybe(above0(LIMITS.stiffness), 'Stiffness of the bolted joint here, N/mm'),
  unitsBefore: maybe(
    z.record(z.string(), wholeFrom(0, LIMITS.count)),
    'How often each kind sat here in finished units of the same model',
  ),
  reach: maybe(
    z.strictObject({
      runDown: maybe(toolNames, 'Tools that reach it when it is run down, any one of them'),
      final: maybe(toolNames, 'Tools that reach it for the final torque, any one of them'),
    }),
    'Which tools reach the bolt: names, or ids of `tools`',
  ),
  note: maybe(note, 'Free text'),
})

const kind = z.strictObject({
  id: idText.check(z.describe('Name of the kind, as text; once in the face and the shared tray')),
  thread,
  length: maybe(length, 'Length under the head'),
  threadLength: maybe(
    length,
    'Length of thread from the tip; absent: threaded to the head less a run-out of 0 to 2.5 pitches',
  ),
  tip: maybe(length, 'Length of incomplete thread at the tip; absent: 1 to 2 pitches'),
  count: maybe(wholeFrom(0, LIMITS.count), 'How many lie in the tray; absent: as many as needed'),
  class: maybe(shortText, 'Strength class, such as "8.8"'),
  head: maybe(head, 'The head'),
  features: maybe(words, 'What the bolt has that others have not, such as "stud end"'),
  washer: maybe(washer, 'Washer under the head'),
  note: maybe(note, 'Free text'),
})

const rank = z.strictObject({
  quantity: z.enum(['grip', 'bottomDepth', 'threadDepth', 'length']),
  less: idText,
  more: idText,
})

const tried = { hole: idText, kind: idText }
const turns = z.strictObject({ ...tried, turns: from0(LIMITS.length) })
const stickOut = z.strictObject({ ...tried, stickOut: length })
const proud = z.strictObject({ ...tried, proud: length })
const trial = oneOf<Trial>(
  'trial',
  [turns, stickOut, proud],
  (given) => {
    const named = (
      [
        ['turns', turns],
        ['stickOut', stickOut],
        ['proud', proud],
      ] as const
    ).filter(([name]) => has(given, name))
    return named.length === 1 ? named[0]![1] : undefined
  },
  {
    id: 'trial',
    title: 'A bolt tried in a hole by hand: turns until the head seats, stick-out, or how far the head stands proud',
  },
)

const line = z
  .strictObject({ name: shortText.check(z.describe('What it is, once in the cover')), from: place, to: place })
  .check(z.refine(hasLength, { params: { code: 'line-without-length' } }))

const cover = z.strictObject({
  outline: outline.check(z.describe('Corners of the cover one after another, x and y in mm as of the holes')),
  openings: maybe(outlines, 'Openings in the cover'),
  thickness,
  regions: maybe(
    z.array(z.strictObject({ outline, thickness })).check(z.maxLength(LIMITS.outlines)),
    'Parts of the cover with a thickness of their own; where two lie over each other the last counts',
  ),
  young: maybe(above0(1e8), 'Modulus of elasticity, MPa; 70000 unless stated'),
  poisson: maybe(z.number().check(z.gte(0), z.lt(0.5)), 'Poisson’s ratio; 0.33 unless stated'),
  lines: maybe(
    z.array(line).check(z.maxLength(LIMITS.outlines)),
    'Where the cover must stay straight: a valve runs there, an edge seals',
  ),
})

const bed = z.strictObject({
  stiffness,
  hollows: maybe(outlines, 'Where nothing lies under the cover'),
})

const embedment = z.strictObject({
  roughness: above0(LIMITS.roughness).check(z.describe('Roughness Rz of the surfaces, µm')),
  interfaces: maybe(wholeFrom(1, LIMITS.interfaces), 'How many surfaces meet between head and thread; 1 unless stated'),
})

const pass = z.strictObject({
  share: z.number().check(z.gt(0), z.lte(1), z.describe('Share of the final torque')),
  sequence: z.array(idText).check(z.minLength(1), z.maxLength(LIMITS.lines)),
})

const kinds = z.array(kind).check(z.maxLength(LIMITS.kinds))

const face = z.strictObject({
  id: idText.check(z.describe('Name of the face, as text; once in the unit')),
  name: maybe(shortText, 'The face in words'),
  history: maybe(history, 'What is known of the face; the unit’s unless stated'),
  torque: maybe(torque, 'Torque of every hole that states none'),
  minimumEngagement: maybe(length, 'Least thread engagement of every hole that states none'),
  gasket: maybe(length, 'Thickness of the gasket of every hole that states none'),
  material: maybe(material, 'Material with the threads in it'),
  holes: z.array(hole).check(z.minLength(1), z.maxLength(LIMITS.holes)),
  kinds: maybe(kinds, 'The tray of this face'),
  ranks: maybe(
    z.array(rank).check(z.maxLength(LIMITS.lines)),
    'What was compared by hand: less is not greater than more',
  ),
  trials: maybe(z.array(trial).check(z.maxLength(LIMITS.lines)), 'Bolts tried in holes by hand'),
  weigh: maybe(
    z.strictObject({
      habit: maybe(z.boolean(), 'Weigh by the designer’s habit; true unless stated'),
      asFound: maybe(z.boolean(), 'Weigh by what was found; true unless stated'),
    }),
    'What is weighed when several placements remain',
  ),
  cover: maybe(cover, 'The cover as a plate'),
  bed: maybe(bed, 'The seat'),
  embedment: maybe(embedment, 'What settles after tightening; not counted unless stated'),
  boltStiffness: maybe(above0(LIMITS.stiffness), 'Stiffness of the bolted joint at every hole that states none, N/mm'),
  snug: maybe(z.boolean(), 'All bolts are run down by hand before the first pass; they are not unless stated'),
  order: maybe(z.array(pass).check(z.maxLength(LIMITS.lines)), 'The manual’s order of tightening'),
  clamp: maybe(above0(1e9), 'Target load of every bolt, N'),
  inside: maybe(idText, 'The face whose cover hides this one once it is on'),
  side: maybe(shortText, 'How the unit lies for work on this face: "pan up"'),
  sealant: maybe(
    z.strictObject({
      name: maybe(shortText, 'The product'),
      minutes: maybe(above0(LIMITS.minutes), 'Minutes that it stays workable, from its product sheet'),
      least: maybe(from0(LIMITS.minutes), 'Least minutes that it must stand before the parts are joined'),
      until: maybe(z.enum(['joined', 'torqued']), 'What must be done within the minutes; torqued unless stated'),
    }),
    'What goes between cover and seat wet',
  ),
  note: maybe(note, 'Free text'),
})

const part = z.strictObject({
  id: idText.check(z.describe('Name of the part, once in the unit')),
  what: z.enum(PART_SORTS),
  name: maybe(shortText, 'The part in words'),
  face: maybe(idText, 'Face that it belongs to'),
  hole: maybe(idText, 'Hole of that face whose bolt holds it'),
  in: maybe(z.literal(true) as Schema<true>, 'true when it is in its place again'),
})

export const unitSchema = z
  .strictObject({
    gripbook: z.literal('unit/1').check(z.describe('Format of this file')),
    name: maybe(shortText, 'The unit in words'),
    history: maybe(history, 'What is known of the unit'),
    faces: z.array(face).check(z.minLength(1), z.maxLength(LIMITS.faces)),
    kinds: maybe(kinds, 'A tray that the faces share'),
    tools: maybe(
      z.array(benchTool).check(z.maxLength(LIMITS.tools)),
      'Tools of the bench that `reach` and `jobs` name',
    ),
    parts: maybe(z.array(part).check(z.maxLength(LIMITS.lines)), 'What else came out and goes back'),
    jobs: maybe(z.array(job).check(z.maxLength(LIMITS.jobs)), 'What the user says of the order of work'),
    note: maybe(note, 'Free text'),
  })
  .check(z.meta({ title: 'Gripbook unit file', description: 'A unit on the bench: its faces, holes and bolts' }))
