import { expect, test } from 'vitest'
import { usualPaper } from './paperSize.ts'

test.each([
  ['en-US', 'Letter'],
  ['es-MX', 'Letter'],
  ['zh-Hant-TW', 'A4'],
  ['en-GB', 'A4'],
  ['de', 'A4'],
])('%s prints on %s', (language, paper) => {
  expect(usualPaper(language)).toBe(paper)
})
