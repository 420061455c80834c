import { readFileSync } from 'node:fs'
import { type FaceAnswer, place, type Unit } from '@gripbook/engine'
import { beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { FONTS, MADE } from '../testing/fonts.ts'
import { infoOf, textOf, whyNoReaders } from '../testing/pdf.ts'
import { learnerSheet } from './learnerSheet.ts'

const UNIT = JSON.parse(readFileSync(new URL('../../../../demo/yard-loader.json', import.meta.url), 'utf8')) as Unit
const FACE = UNIT.faces[0]!
const OPTIONS = { paper: 'A4', fonts: FONTS, made: MADE } as const

let answer: FaceAnswer
beforeAll(async () => {
  answer = (await place({ ...UNIT, faces: [FACE] })).faces[0]!
})

test('a face without holes asks nothing', async () => {
  const refused = await learnerSheet(UNIT, { id: 'x', holes: [] }, answer, OPTIONS)
  expect(refused).toEqual({ ok: false, fault: { code: 'no-holes', face: 'x' } })
})

describe('as readers see it', () => {
  const why = whyNoReaders()
  beforeEach(({ skip }) => {
    if (why !== null) skip(why)
  })

  const pages = async (paper: 'A4' | 'Letter' = 'A4') => {
    const sheet = await learnerSheet(UNIT, FACE, answer, { ...OPTIONS, paper })
    if (!sheet.ok) throw new Error(sheet.fault.code)
    const count = Number(infoOf(sheet.bytes).Pages)
    return Array.from({ length: count }, (_, i) => textOf(sheet.bytes, i + 1).replace(/\s+/g, ' '))
  }

  test('[PR8] the first page asks and does not tell', async () => {
    const [first] = await pages()
    expect(first).toContain('Which bolt goes in hole 1, and why?')
    expect(first).toContain('Hole 4 came apart with c45 (M6×45) in it. Can that go back there?')
    expect(first).toContain('Read there, mm: grip 20.9 ± 0.1')
    expect(first).not.toMatch(/belongs there|unfinished thread|too short|settle/)
  })

  test('[PR8] the answers follow on a page of their own, with the reasons of the placement answer', async () => {
    const all = await pages()
    const at = all.findIndex((text) => text.includes('the answers'))
    expect(at).toBeGreaterThan(0)
    for (const text of all.slice(0, at)) expect(text).not.toContain('belongs there')
    const told = all.slice(at).join(' ')
    expect(told).toContain('c35 (M6×35) belongs there; it fits: 1.5 mm more thread than needed')
    expect(told).toContain('c45 (M6×45): full thread runs 5.1 mm into the unfinished thread')
    expect(told).toContain('Next: measure the grip of hole 11')
    for (const { id } of FACE.holes) expect(told).toContain(` ${id} c`)
  })

  test.each(['A4', 'Letter'] as const)('the face stands with all its questions on one page of %s', async (paper) => {
    const [first, second] = await pages(paper)
    expect(first!.match(/Read there, mm/g)).toHaveLength(4)
    expect(second).toContain('the answers')
  })
})
