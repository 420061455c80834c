import { beforeEach, describe, expect, test } from 'vitest'
import { makeDocument } from './document.ts'
import type { DocumentOptions, Sheet } from './sheet.ts'
import { FONTS, MADE } from './testing/fonts.ts'
import { infoOf, otherTextOf, pictureOf, structureOf, textOf, whyNoReaders } from './testing/pdf.ts'

const OPTIONS: DocumentOptions = { title: 'Pump <cover> & pan', made: MADE, fonts: FONTS, paper: 'A4' }

function sample(sheet: Sheet): void {
  sheet.heading(1, 'Pump cover')
  sheet.paragraph('M6×45 ± 0.1 · Ø 6 ≥ 7 µm − 2 → Ελληνικά, Кириллица')
  sheet.list(['first thing', 'second thing '.repeat(30)])
  sheet.figure({ alt: 'A bar', height: 10 }, (pen, { x, y }) => pen.rect(x, y, 100, 2, { fill: '#000000' }))
  sheet.table({
    columns: [
      { title: 'Hole', share: 1 },
      { title: 'Why', share: 4 },
    ],
    rows: Array.from({ length: 90 }, (_, i) => [
      `h${i}`,
      i === 40 ? 'so much to say about it '.repeat(700) : `row ${i} ends`,
    ]),
  })
}

test('[PR1] the same content and date give the same bytes', async () => {
  const [first, second] = [await makeDocument(OPTIONS, sample), await makeDocument(OPTIONS, sample)]
  expect(Buffer.compare(first, second)).toBe(0)
  const later = await makeDocument({ ...OPTIONS, made: new Date('2026-03-02T00:00:00Z') }, sample)
  expect(Buffer.compare(first, later)).not.toBe(0)
})

test('a document of nothing is one empty page', async () => {
  const bytes = await makeDocument(OPTIONS, () => {})
  expect(Buffer.from(bytes.subarray(0, 8)).toString()).toBe('%PDF-1.7')
})

test('a picture that is no JPEG and no PNG is refused', async () => {
  const bytes = new Uint8Array([1, 2, 3, 4])
  await expect(makeDocument(OPTIONS, (sheet) => sheet.picture(bytes, { alt: 'x' }))).rejects.toThrow('image format')
})

describe('as readers see it', () => {
  const why = whyNoReaders()
  beforeEach(({ skip }) => {
    if (why !== null) skip(why)
  })

  test('[PR2] two readers open it, its text can be selected, and it says what it is', async () => {
    const bytes = await makeDocument(OPTIONS, sample)
    const info = infoOf(bytes)
    expect(info).toMatchObject({ Title: 'Pump <cover> & pan', Tagged: 'yes' })
    expect(info['Page size']).toBe('595.276 x 841.89 pts (A4)')
    for (const text of [textOf(bytes), otherTextOf(bytes)]) {
      expect(text).toContain('M6×45 ± 0.1 · Ø 6 ≥ 7 µm − 2 → Ελληνικά, Кириллица')
      expect(text).toContain('row 89 ends')
    }
    expect(Buffer.from(bytes).toString('utf8')).toContain('Pump &lt;cover&gt; &amp; pan')
  })

  test('[PR2] a screen reader meets headings, lists, tables and figures in their order', async () => {
    const structure = structureOf(await makeDocument(OPTIONS, sample))
    const tags = [...structure.matchAll(/^ {2}(H1|P|L|Figure|Table)\b/gm)].map(([, tag]) => tag)
    expect(tags).toEqual(['H1', 'P', 'L', 'Figure', 'Table'])
    expect(structure.match(/^ {6}TH:?$/gm)).toHaveLength(2 + 90)
    expect(structure).toContain('/Scope /Column')
    expect(structure).toContain('second thing second thing')
  })

  test('a table goes on over pages, its head on each, a row too high for one page too', async () => {
    const bytes = await makeDocument(OPTIONS, sample)
    const pages = Number(infoOf(bytes).Pages)
    expect(pages).toBeGreaterThan(3)
    for (let page = 1; page <= pages; page++) expect(textOf(bytes, page)).toMatch(/Hole\s+Why/)
    const all = textOf(bytes)
    expect(all.match(/\bmuch\b/g)).toHaveLength(700)
    expect(all).toContain(`Page ${pages} of ${pages}`)
  })

  test('letters that the font lacks are boxes for the eye and the true text for whoever copies', async () => {
    const bytes = await makeDocument(OPTIONS, (sheet) => sheet.paragraph('Signed by 山田太郎 and محمد علي, עברית too'))
    const text = textOf(bytes)
    expect(text).toContain('山田太郎')
    expect(text).toContain('محمد علي')
    expect(text).toContain('עברית')
    expect(text).toContain('A box stands for a letter')
    expect(structureOf(bytes)).toContain('Signed by')
  })

  test('a name of Latin letters says nothing of boxes', async () => {
    expect(textOf(await makeDocument(OPTIONS, sample))).not.toContain('A box stands')
  })

  test.each(['A4', 'Letter'] as const)('a line of 100 mm on %s is 100 mm in both readers’ pictures', async (paper) => {
    const bytes = await makeDocument({ ...OPTIONS, paper, landscape: true }, (sheet) =>
      sheet.figure({ alt: 'A bar', height: 10 }, (pen, { x, y }) => pen.rect(x, y, 100, 5, { fill: '#000000' })),
    )
    for (const reader of ['poppler', 'mupdf'] as const) {
      const { grey } = pictureOf(bytes, 1, 254, reader)
      const dark = grey.reduce((sum, value) => sum + (value < 128 ? 1 : 0), 0)
      // 1000 by 50 pixels, and the page's number.
      expect(dark).toBeGreaterThan(49_000)
      expect(dark).toBeLessThan(53_500)
    }
  })
})
