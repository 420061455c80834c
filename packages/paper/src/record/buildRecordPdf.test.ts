import type { BuildRecord } from '@gripbook/record'
import { beforeEach, describe, expect, test } from 'vitest'
import { FONTS, MADE } from '../testing/fonts.ts'
import { infoOf, otherTextOf, pictureOf, structureOf, textOf, whyNoReaders } from '../testing/pdf.ts'
import { buildRecordPdf } from './buildRecordPdf.ts'
import { checkAddress } from './front.ts'
import { fileRecord, finishedPictures, finishedRecord } from './testing/finished.ts'

const printed = async (
  record: BuildRecord,
  paper: 'A4' | 'Letter' = 'A4',
  photographs = new Map<string, Uint8Array>(),
) => buildRecordPdf(record, { fonts: FONTS, paper, photographs, made: MADE })
/** What stands in it, without the breaks of its lines. */
const read = async (record: BuildRecord): Promise<string> => textOf(await printed(record)).replace(/\s+/g, ' ')

test('[PR11] the same record gives the same bytes', async () => {
  const record = await finishedRecord()
  const pictures = finishedPictures()
  const [one, two] = [await printed(record, 'A4', pictures), await printed(await finishedRecord(), 'A4', pictures)]
  expect(Buffer.compare(one, two)).toBe(0)
})

test('the QR code asks the shop’s server, and where none is known it holds the hash itself', async () => {
  const record = await finishedRecord()
  expect(checkAddress(record)).toBe(`https://shop.local:7480/api/units/${record.unit.id}/record/${record.hash}`)
  expect(checkAddress(await finishedRecord({ shop: {} }))).toBe(record.hash)
})

describe('as two readers see it', () => {
  const why = whyNoReaders()
  beforeEach(({ skip }) => skip(why !== null, why ?? ''))

  test('it is tagged, titled, and both read the same words', async () => {
    const bytes = await printed(await finishedRecord(), 'Letter', finishedPictures())
    expect(infoOf(bytes)).toMatchObject({ Tagged: 'yes', Title: 'Build record: Gearbox of yard loader 7' })
    for (const text of [textOf(bytes), otherTextOf(bytes)])
      for (const words of [
        'RELEASED',
        'What was wrong',
        'What was changed',
        'Is it proven?',
        'Signatures',
        'Bo Checker',
      ])
        expect(text).toContain(words)
    expect(structureOf(bytes).match(/^ {2}Figure:$/gm)).toHaveLength(5)
    expect(Buffer.from(bytes).toString('latin1')).toContain('/Alt (Photograph of Oil pan with holes 1 to 8 marked.')
  })

  test('the first page says what was wrong, what was changed, and what of it is proven', async () => {
    const first = textOf(await printed(await finishedRecord()), 1).replace(/\s+/g, ' ')
    expect(first).toContain('Complaint: Second gear slips when warm.')
    expect(first).toContain('the bolts found in holes 3, 4 cannot be right there, by their sizes')
    expect(first).toContain('hole 3 now a20 (M6×20), was a30 (M6×30)')
    expect(first).toContain('1 outside, 1 by feel, without a torque')
    expect(first).toContain('1 bolt with a wrench out of calibration')
    expect(first).toContain('2, each answered for by name')
    expect(first).toContain('fits the entries, by their hash')
    expect(first).toContain((await finishedRecord()).hash)
  })

  test('[PR12] overrides stand with person, time and reason', async () => {
    const text = await read(await finishedRecord())
    expect(text).toContain('Ane Builder, 2026-03-04 08:31: Compared with w4 at 20 N·m this morning, both the same')
    expect(text).toContain('11.8 N·m is outside 9.4 to 10.6 N·m')
    expect(text).toContain('WAIVED by Ane Builder')
    expect(text).toContain('Old sealant in the thread. Chased by hand')
  })

  test('[PR13] what is not released is printed as such, large, with all that is open', async () => {
    const record = await finishedRecord({ first: 110 })
    const text = await read(record)
    expect(text).toContain('NOT RELEASED')
    expect(text).not.toMatch(/(?<!NOT )RELEASED/)
    expect(text).toContain(`Open: ${record.open.length} things`)
    expect(text).toContain('no second person has signed as checker')
    // White on black over the width of the page: a look from afar is enough.
    const { grey, width, height } = pictureOf(await printed(record), 1, 50)
    const rows = Array.from({ length: height }, (_, y) => grey.subarray(y * width, (y + 1) * width))
    expect(rows.filter((row) => row.filter((pixel) => pixel < 60).length > 0.7 * width).length).toBeGreaterThan(15)
  })

  test('each other state has its own words', async () => {
    const record = await finishedRecord()
    const says = async (changed: Partial<BuildRecord>) => read({ ...record, ...changed })
    expect(await says({ state: 'does not fit', release: { ...record.release!, holds: false } })).toContain(
      'THE RELEASE DOES NOT FIT',
    )
    const since = [{ event: 'e', who: 'Ane Builder', at: '2026-06-10T13:01:00.000Z', says: 'Note: asked for the oil' }]
    expect(await says({ state: 'changed since', since })).toMatch(/CHANGED SINCE ITS RELEASE[\s\S]*asked for the oil/)
    const back = [{ event: 'e', who: 'Ane Builder', at: '2026-06-10T13:01:00.000Z', complaint: 'Weeps', answers: [] }]
    expect(await says({ state: 'came back', cameBack: back })).toMatch(/CAME BACK, NOT RELEASED[\s\S]*Weeps/)
    const answers = [
      { event: 'f', who: 'Ane Builder', at: '2026-06-11T08:00:00.000Z', found: 'a torn gasket', face: 'pan' },
    ]
    expect(await says({ cameBack: [{ ...back[0]!, answers }] })).toMatch(/Weeps[\s\S]*Found at .*a torn gasket/)
    expect(await says({ state: 'released open', open: record.open })).toContain('RELEASED WITH THINGS OPEN')
    const alone = { ...record.release!, onlyPerson: true }
    const proof = { ...record.proof, checkedBy: [] }
    expect(await says({ release: alone, proof })).toContain('no: the shop is one person')
  })

  test('[GA5] a reading at the end from before the cover came off again stands as what it was', async () => {
    const record = await finishedRecord()
    const [{ after, ...endPlay }, ...others] = record.figures as [(typeof record.figures)[number]]
    const opened = { ...endPlay, verdict: 'before opening' as const, earlier: [after!] }
    const text = await read({ ...record, figures: [opened, ...others] })
    expect(text).toContain('NOT TAKEN SINCE IT WAS OPENED AGAIN')
    expect(text).toMatch(/–; before it was opened .*again: 0\.24 ± 0\.02 mm/)
  })

  test('somebody whose name is not known is called by the beginning of the id', async () => {
    const text = await read(await finishedRecord({ people: {} }))
    expect(text).toContain('person a1f0c0de')
    expect(text).not.toMatch(/a1f0c0de-/)
  })

  test('a unit file gives a state that says it holds no story: no names, no hash of entries', async () => {
    const text = await read(fileRecord())
    expect(text).toContain('NO STORY, NOT RELEASED')
    expect(text).toContain('This was made from a unit file')
    expect(text).toContain('A unit file does not say what was changed.')
    expect(text).not.toContain('Is it proven?')
    expect(text).not.toMatch(/Tightened|NOT PLACED|by hand|2026-01-01/)
  })

  test('a stop that was passed in silence says that nobody answered for it', async () => {
    const record = await finishedRecord()
    const stops = record.stops.map(({ override: _, ...stop }) => stop)
    const text = await read({ ...record, stops, proof: { ...record.proof, overridden: 0, silent: 2 } })
    expect(text).toContain('2 in silence: nobody answered for them')
    expect(text).toContain('NOBODY: passed in silence')
  })

  test('a photograph that is not here, or that a PDF cannot hold, is told', async () => {
    const photographs = new Map([['1'.repeat(64), new Uint8Array([1, 2, 3])]])
    const text = textOf(await printed(await finishedRecord(), 'A4', photographs)).replace(/\s+/g, ' ')
    expect(text).toContain('The photograph of this face cannot be shown.')
    expect(text).toContain('The photograph of this face is not in the archive.')
    expect(text).toContain('2 photographs that entries speak of are not here or cannot be shown.')
  })
})
