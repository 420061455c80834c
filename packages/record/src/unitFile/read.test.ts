import type { Quantity, Unit } from '@gripbook/engine'
import { describe, expect, test } from 'vitest'
import type { FileFault } from './fault.ts'
import { faultLines, faultText } from './faultWords.ts'
import { pathText } from './path.ts'
import { readUnitFile } from './read.ts'
import { EXAMPLE, FULL } from './testing/units.ts'

type Loose = Record<string, unknown>

/** What is wrong with the full unit after a change, as "path code". */
function faultsAfter(change: (unit: Loose, face: Loose, hole: Loose, kind: Loose) => void): string[] {
  const unit = JSON.parse(JSON.stringify(FULL))
  change(unit, unit.faces[0], unit.faces[0].holes[0], unit.faces[0].kinds[0])
  return codes(JSON.stringify(unit))
}

function codes(text: string): string[] {
  return faultsIn(text).map((fault) => `${pathText(fault.path)} ${fault.code}`.trim())
}

function faultsIn(text: string): FileFault[] {
  const read = readUnitFile(text)
  if (!read.ok) for (const fault of read.faults) expect(faultText(fault)).toMatch(/[.?]$/)
  return read.ok ? [] : read.faults
}

test('the example of the contract is read as it stands', () => {
  expect(readUnitFile(EXAMPLE)).toEqual({ ok: true, value: JSON.parse(EXAMPLE) })
})

test('a unit with every field in every shape is read as it stands', () => {
  expect(readUnitFile(JSON.stringify(FULL))).toEqual({ ok: true, value: FULL })
})

test.each<[string, Quantity]>([
  ['a bed without a lower end', { atMost: 20 }],
  ['a bed that may be nothing', { atLeast: 0, atMost: 20 }],
  ['a bed of nothing', 0],
])('%s is no fault of the file: only the planning of an order needs more', (_what, stiffness) => {
  const unit: Unit = { ...FULL, faces: FULL.faces.map((face) => ({ ...face, bed: { stiffness } })) }
  expect(readUnitFile(JSON.stringify(unit))).toEqual({ ok: true, value: unit })
})

test('a byte order mark before the text is passed over', () => {
  expect(readUnitFile(`\uFEFF${EXAMPLE}`).ok).toBe(true)
})

describe('fields and their types', () => {
  const hole = 'faces[0].holes[0]'
  const kind = 'faces[0].kinds[0]'
  test.each<[string, Parameters<typeof faultsAfter>[0], string[]]>([
    ['an unknown field', (_u, _f, h) => (h.gripp = 3), [`${hole}.gripp unknown-field`]],
    ['an unknown field of the unit', (u) => (u.face = []), ['face unknown-field']],
    [
      'an unknown field in a quantity',
      (_u, _f, h) => (h.grip = { value: 3, plusminus: 1 }),
      [`${hole}.grip.plusminus unknown-field`],
    ],
    [
      'a field named after something built in',
      (_u, f) => Object.assign(f, { constructor: 1 }),
      ['faces[0].constructor unknown-field'],
    ],
    ['a missing id', (_u, _f, h) => delete h.id, [`${hole}.id missing-field`]],
    ['a missing thread', (_u, _f, h) => delete h.thread, [`${hole}.thread missing-field`]],
    ['a missing list of holes', (_u, f) => delete f.holes, ['faces[0].holes missing-field']],
    ['an id that is a number', (u) => ((u.faces as Loose[])[1]!.id = 2), ['faces[1].id wrong-type']],
    ['null for what is unknown', (_u, _f, h) => (h.grip = null), [`${hole}.grip not-a-quantity`]],
    ['a text for a length', (_u, _f, h) => (h.grip = '31.9'), [`${hole}.grip not-a-quantity`]],
    ['a text inside a quantity', (_u, _f, h) => (h.grip = { value: '31.9' }), [`${hole}.grip.value wrong-type`]],
    ['a list for a length', (_u, _f, h) => (h.grip = [1, 2]), [`${hole}.grip not-a-quantity`]],
    [
      'a value and ends in one quantity',
      (_u, _f, h) => (h.grip = { value: 1, atMost: 2 }),
      [`${hole}.grip quantity-mixed`],
    ],
    ['a quantity without a figure', (_u, _f, h) => (h.grip = { unit: 'mm' }), [`${hole}.grip quantity-empty`]],
    ['a tolerance without a value', (_u, _f, h) => (h.grip = { plusMinus: 1 }), [`${hole}.grip.value missing-field`]],
    ['a negative length', (_u, _f, h) => (h.bracket = -2), [`${hole}.bracket negative`]],
    [
      'a negative tolerance',
      (_u, _f, h) => (h.grip = { value: 3, plusMinus: -1 }),
      [`${hole}.grip.plusMinus negative`],
    ],
    ['a negative end', (_u, _f, h) => (h.bottomDepth = { atLeast: -1 }), [`${hole}.bottomDepth.atLeast negative`]],
    ['crossed ends', (_u, _f, h) => (h.bottomDepth = { atLeast: 6, atMost: 5 }), [`${hole}.bottomDepth ends-crossed`]],
    [
      'a nominal length of nothing',
      (_u, _f, _h, k) => (k.length = { nominal: 0 }),
      [`${kind}.length.nominal not-above-zero`],
    ],
    ['a length beyond all bolts', (_u, _f, _h, k) => (k.length = 1e9), [`${kind}.length too-large`]],
    ['an unknown unit', (_u, _f, h) => (h.grip = { value: 1, unit: 'cm' }), [`${hole}.grip.unit unknown-unit`]],
    [
      'a torque unit on a length',
      (_u, _f, h) => (h.grip = { value: 1, unit: 'Nm' }),
      [`${hole}.grip.unit wrong-dimension`],
    ],
    [
      'a length unit on a torque',
      (_u, f) => (f.torque = { value: 1, unit: 'mm' }),
      ['faces[0].torque.unit wrong-dimension'],
    ],
    [
      'a unit on the bed stiffness',
      (_u, f) => (f.bed = { stiffness: { value: 5, unit: 'mm' } }),
      ['faces[0].bed.stiffness.unit unknown-field'],
    ],
    [
      'two figures that are not the same length',
      (_u, _f, h) => (h.grip = { value: 2.553, unit: 'in', also: { value: 64.55, unit: 'mm' } }),
      [`${hole}.grip two-figures-disagree`],
    ],
    [
      'two figures that are not the same torque',
      (_u, f) => (f.torque = { value: 10, also: { value: 10, unit: 'lbf·ft' } }),
      ['faces[0].torque two-figures-disagree'],
    ],
    ['a negative count', (_u, _f, _h, k) => (k.count = -1), [`${kind}.count negative`]],
    ['half a bolt', (_u, _f, _h, k) => (k.count = 1.5), [`${kind}.count not-whole`]],
    ['visit nought', (_u, _f, h) => (h.visit = 0), [`${hole}.visit too-small`]],
    ['an unknown thread', (_u, _f, h) => (h.thread = 'M6.3'), [`${hole}.thread not-a-thread`]],
    [
      'an unknown thread among candidates',
      (_u, _f, h) => (h.thread = ['M6', 'W6']),
      [`${hole}.thread[1] not-a-thread`],
    ],
    ['no candidates', (_u, _f, h) => (h.thread = []), [`${hole}.thread too-few`]],
    ['a thread that is a number', (_u, _f, h) => (h.thread = 6), [`${hole}.thread wrong-type`]],
    ['an unknown ending', (_u, _f, h) => (h.ending = 'blnd'), [`${hole}.ending unknown-word`]],
    ['an unknown history', (u) => (u.history = 'opened'), ['history unknown-word']],
    ['another format', (u) => (u.gripbook = 'unit/2'), ['gripbook wrong-format']],
    ['a word for yes', (_u, _f, h) => (h.locates = 'yes'), [`${hole}.locates wrong-type`]],
    ['a place with one number', (_u, _f, h) => (h.at = [1]), [`${hole}.at wrong-type`]],
    ['a place with three numbers', (_u, _f, h) => (h.at = [1, 2, 3]), [`${hole}.at wrong-type`]],
    ['a place with a text', (_u, _f, h) => (h.at = [1, '2']), [`${hole}.at[1] wrong-type`]],
    ['no holes', (u) => ((u.faces as Loose[])[1]!.holes = []), ['faces[1].holes too-few']],
    ['no faces', (u) => (u.faces = []), ['faces too-few']],
    ['an empty id', (u) => ((u.faces as Loose[])[1]!.id = ''), ['faces[1].id text-empty']],
    ['an id too long', (u) => ((u.faces as Loose[])[1]!.id = 'x'.repeat(101)), ['faces[1].id text-too-long']],
    ['a name that paints on the screen', (u) => (u.name = 'a\u001b[2J'), ['name text-unprintable']],
    ['a name that runs backwards', (u) => (u.name = 'a\u202Eb'), ['name text-unprintable']],
    [
      'a material without a name',
      (_u, _f, h) => (h.material = { shearStrength: 3 }),
      [`${hole}.material.name missing-field`],
    ],
    ['a material that is a number', (_u, _f, h) => (h.material = 3), [`${hole}.material wrong-type`]],
    [
      'a washer of the wrong shape',
      (_u, _f, _h, k) => (k.washer = { thick: 1 }),
      [`${kind}.washer.thickness missing-field`, `${kind}.washer.thick unknown-field`],
    ],
    [
      'a captive washer without thickness',
      (_u, _f, _h, k) => (k.washer = { captive: true }),
      [`${kind}.washer.thickness missing-field`],
    ],
    ['a head without a form', (_u, _f, _h, k) => (k.head = {}), [`${kind}.head.form missing-field`]],
    [
      'a trial of two figures',
      (_u, f) => (f.trials = [{ hole: '1', kind: 'b1', turns: 2, proud: 1 }]),
      ['faces[0].trials[0] trial-figures'],
    ],
    ['a trial of no figure', (_u, f) => (f.trials = [{ hole: '1', kind: 'b1' }]), ['faces[0].trials[0] trial-figures']],
    ['a trial that is no object', (_u, f) => (f.trials = [3]), ['faces[0].trials[0] wrong-type']],
    [
      'a rank of an unknown quantity',
      (_u, f) => (f.ranks = [{ quantity: 'lenght', less: 'b1', more: 'b2' }]),
      ['faces[0].ranks[0].quantity unknown-word'],
    ],
    [
      'a share above one',
      (_u, f) => (f.order = [{ share: 1.2, sequence: ['1'] }]),
      ['faces[0].order[0].share too-large'],
    ],
    [
      'a cover of two corners',
      (_u, f) =>
        (f.cover = {
          outline: [
            [0, 0],
            [1, 1],
          ],
          thickness: 3,
        }),
      ['faces[0].cover.outline too-few'],
    ],
    [
      'a cover without thickness',
      (_u, f) => ((f.cover as Loose).thickness = 0),
      ['faces[0].cover.thickness not-above-zero'],
    ],
    [
      'a cover thick from something up',
      (_u, f) => ((f.cover as Loose).thickness = { atLeast: 7 }),
      ['faces[0].cover.thickness.atMost missing-field'],
    ],
    [
      'a line from a place to itself',
      (_u, f) => ((f.cover as Loose).lines = [{ name: 'valve', from: [1, 1], to: [1, 1] }]),
      ['faces[0].cover.lines[0] line-without-length'],
    ],
    [
      'a line without a name',
      (_u, f) => ((f.cover as Loose).lines = [{ from: [1, 1], to: [1, 2] }]),
      ['faces[0].cover.lines[0].name missing-field'],
    ],
    ['a hollow of one corner', (_u, f) => ((f.bed as Loose).hollows = [[[1, 1]]]), ['faces[0].bed.hollows[0] too-few']],
    ['a surface without roughness', (_u, f) => (f.embedment = {}), ['faces[0].embedment.roughness missing-field']],
    [
      'a roughness of nothing',
      (_u, f) => (f.embedment = { roughness: 0 }),
      ['faces[0].embedment.roughness not-above-zero'],
    ],
    [
      'a roughness in nanometres',
      (_u, f) => (f.embedment = { roughness: 6300 }),
      ['faces[0].embedment.roughness too-large'],
    ],
    [
      'no interface',
      (_u, f) => (f.embedment = { roughness: 6, interfaces: 0 }),
      ['faces[0].embedment.interfaces too-small'],
    ],
    [
      'half an interface',
      (_u, f) => (f.embedment = { roughness: 6, interfaces: 1.5 }),
      ['faces[0].embedment.interfaces not-whole'],
    ],
    ['too many words', (_u, _f, h) => (h.needs = Array(51).fill('x')), [`${hole}.needs too-many`]],
  ])('%s is a fault with its path', (_what, change, expected) => {
    const found = faultsAfter(change)
    expect(found.filter((fault) => !fault.endsWith('no-such-name'))).toEqual(expected)
  })
})

describe('names', () => {
  test.each<[string, Parameters<typeof faultsAfter>[0], string[]]>([
    [
      'a face twice',
      (u) => ((u.faces as Loose[])[1]!.id = 'pan'),
      ['faces[1].id repeated-name', 'faces[0].inside no-such-name'],
    ],
    [
      'a hole twice in its face',
      (_u, f) => ((f.holes as Loose[])[1]!.id = '1'),
      [
        'faces[0].holes[1].id repeated-name',
        'faces[0].ranks[0].more no-such-name',
        'faces[0].trials[2].hole no-such-name',
        'faces[0].order[0].sequence[1] no-such-name',
        'faces[0].order[1].sequence[0] no-such-name',
      ],
    ],
    [
      'a kind of the face that is in the shared tray',
      (u) => ((u.kinds as Loose[])[0]!.id = 'b2'),
      [
        'faces[0].kinds[1].id repeated-name',
        'faces[0].holes[0].unitsBefore["t-1"] no-such-name',
        'faces[0].ranks[1].less no-such-name',
      ],
    ],
    [
      'an as-found kind that is not there',
      (_u, _f, h) => (h.asFound = 'b9'),
      ['faces[0].holes[0].asFound no-such-name'],
    ],
    [
      'a rank of a hole that is not there',
      (_u, f) => (f.ranks = [{ quantity: 'grip', less: '1', more: 'b1' }]),
      ['faces[0].ranks[0].more no-such-name'],
    ],
    [
      'a length rank of a hole',
      (_u, f) => (f.ranks = [{ quantity: 'length', less: '1', more: 'b1' }]),
      ['faces[0].ranks[0].less no-such-name'],
    ],
    [
      'a rank of a hole with itself',
      (_u, f) => (f.ranks = [{ quantity: 'grip', less: '1', more: '1' }]),
      ['faces[0].ranks[0] rank-of-itself'],
    ],
    [
      'a trial of a hole that is not there',
      (_u, f) => (f.trials = [{ hole: '7', kind: 'b1', turns: 3 }]),
      ['faces[0].trials[0].hole no-such-name'],
    ],
    [
      'an order through a hole that is not there',
      (_u, f) => (f.order = [{ share: 1, sequence: ['1', '9'] }]),
      ['faces[0].order[0].sequence[1] no-such-name'],
    ],
    [
      'a line of a cover twice',
      (_u, f) =>
        ((f.cover as Loose).lines = [
          { name: 'valve', from: [1, 1], to: [1, 2] },
          { name: 'edge', from: [0, 0], to: [0, 2] },
          { name: 'valve', from: [2, 1], to: [2, 2] },
        ]),
      ['faces[0].cover.lines[2].name repeated-name'],
    ],
    [
      'a kind called none',
      (u) => ((u.kinds as Loose[])[0]!.id = 'none'),
      [
        'kinds[0].id reserved-name',
        'faces[0].holes[0].unitsBefore["t-1"] no-such-name',
        'faces[0].ranks[1].less no-such-name',
      ],
    ],
    [
      'a face inside itself',
      (unit) => ((unit.faces as Loose[])[0]!.inside = 'pan'),
      ['faces[0].inside face-inside-itself'],
    ],
    ['a job twice', (unit) => ((unit.jobs as Loose[])[1]!.id = 'filter'), ['jobs[1].id repeated-name']],
    [
      'work on a face that is not there',
      (unit) => ((unit.jobs as Loose[])[0]!.face = 'pam'),
      ['jobs[0].face no-such-name'],
    ],
    [
      'a part at a hole that is not there',
      (unit) => ((unit.parts as Loose[])[0]!.hole = '9'),
      ['parts[0].hole no-such-name'],
    ],
    ['a job that is not done', (u) => ((u.jobs as Loose[])[0]!.done = false), ['jobs[0].done wrong-type']],
    ['a need that is a number', (u) => ((u.jobs as Loose[])[0]!.needs = [3]), ['jobs[0].needs[0] wrong-type']],
  ])('%s is a fault', (_what, change, expected) => {
    expect(faultsAfter(change)).toEqual(expected)
  })

  test('the same hole id may stand in two faces', () => {
    expect(FULL.faces.map((face) => face.holes[0]?.id)).toEqual(['1', '1'])
  })

  test('what points to a name that could not be read is not blamed', () => {
    expect(faultsAfter((_u, _f, hole) => (hole.id = 1))).toEqual(['faces[0].holes[0].id wrong-type'])
  })

  test('a name that the language keeps for itself is no kind and no hole', () => {
    const text = JSON.stringify(FULL).replace('"unitsBefore":{', '"unitsBefore":{"__proto__":1,')
    expect(codes(text)).toEqual(['faces[0].holes[0].unitsBefore.__proto__ no-such-name'])
    expect(codes(JSON.stringify(FULL).replace('"id":"rear"', '"id":"__proto__"'))).toEqual([
      'faces[1].id reserved-name',
      'faces[0].inside no-such-name',
    ])
  })
})

test('all faults are told at once, of the schema and between the parts', () => {
  const found = faultsAfter((unit, face, hole) => {
    unit.nme = 'x'
    hole.grip = -1
    face.ranks = [{ quantity: 'grip', less: '1', more: '8' }]
  })
  expect(found).toEqual(['faces[0].holes[0].grip negative', 'nme unknown-field', 'faces[0].ranks[0].more no-such-name'])
})

test('a near name is suggested', () => {
  const text = JSON.stringify(FULL)
    .replace('"threadDepth"', '"threaddepht"')
    .replace('"asFound":"b1"', '"asFound":"B1"')
  expect(faultsIn(text).map(faultText)).toEqual([
    'faces[0].holes[0].threaddepht: no field of this name is known here. Did you mean "threadDepth"?',
    'faces[0].holes[0].asFound: there is no bolt kind "B1" here. Did you mean "b1"?',
  ])
})

test('fifty faults are said, the rest are counted', () => {
  const faults = faultsIn(JSON.stringify({ gripbook: 'unit/1', faces: Array(80).fill(3) }))
  expect(faults).toHaveLength(80)
  expect(faultLines(faults)).toHaveLength(51)
  expect(faultLines(faults).at(-1)).toBe('and 30 more')
})

describe('text that is no unit file', () => {
  test.each([
    ['nothing', '', 'not-json'],
    ['a number', '5', 'wrong-type'],
    ['a list', '[]', 'wrong-type'],
    ['null', 'null', 'wrong-type'],
    ['brackets without end', '['.repeat(100_000), 'too-deep'],
    ['objects without end', '{"a":'.repeat(100_000), 'too-deep'],
    ['ten megabytes of nonsense', 'x'.repeat(10_000_000), 'too-big'],
    ['a list of very many things', `[${'0,'.repeat(1_000_000)}0]`, 'too-many-values'],
    ['a text without end', `"${'x'.repeat(7_000_000)}`, 'not-json'],
    ['a figure without end', '9'.repeat(7_000_000), 'number-out-of-range'],
  ])('%s is one fault', (_what, text, code) => {
    expect(faultsIn(text)[0]?.code).toBe(code)
  })
})

test('a list of very many wrong holes is refused', () => {
  expect(readUnitFile(`{"gripbook":"unit/1","faces":[{"id":"a","holes":[${'{"x":1},'.repeat(200_000)}{}]}]}`).ok).toBe(
    false,
  )
})
