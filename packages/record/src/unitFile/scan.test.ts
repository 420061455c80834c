import fc from 'fast-check'
import { expect, test } from 'vitest'
import { faultText } from './faultWords.ts'
import { scanJson } from './scan.ts'

const said = (text: string) => scanJson(text).faults.map(faultText)

function parses(text: string): boolean {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}

test('a text is broken just when the language cannot parse it', () => {
  fc.assert(
    fc.property(fc.json({ maxDepth: 5 }), (text) => !scanJson(text).broken),
    { seed: 1, numRuns: 500 },
  )
  const pieces = fc.constantFrom(
    '{',
    '}',
    '[',
    ']',
    ',',
    ':',
    '"a"',
    '"\\u00e9"',
    '"\\x"',
    '1',
    '-',
    '0',
    '.5',
    'e3',
    'true',
    'null',
    ' ',
    '\n',
    '\t',
    "'",
    '"',
    '\u00a0',
  )
  fc.assert(
    fc.property(fc.array(pieces, { maxLength: 9 }), (parts) => {
      const text = parts.join('')
      expect(scanJson(text).broken).toBe(!parses(text))
    }),
    { seed: 2, numRuns: 20_000 },
  )
})

test('a slip is shown by line and column, with what belongs there', () => {
  expect(said('{\n  "faces": [\n    {"id": "a",}\n  ]\n}')).toEqual([
    'faces[0].id: line 3, column 16: found "}" where a field name in double quotes belongs. Is there a comma too many before it, or a value missing?',
  ])
  expect(said('{"grip": NaN}')).toEqual([
    'grip: line 1, column 10: found "NaN" where a value belongs. Leave out what is unknown.',
  ])
  expect(said('{"grip": 1')).toEqual([
    'grip: line 1, column 11: the file ends where a comma or a closing bracket belongs.',
  ])
})

test('a field that stands twice is found, also when it is written with escapes', () => {
  expect(scanJson('{"a":1,"b":[{"c":1,"\\u0063":2}]}').faults).toEqual([
    { code: 'repeated-field', path: ['b', 0, 'c'], name: 'c' },
  ])
  expect(scanJson('{"a":{"a":1},"b":{"a":1}}').faults).toEqual([])
})

test('a number too great to be held is found', () => {
  expect(scanJson('{"a":[1e308,-1e999]}').faults).toEqual([
    { code: 'number-out-of-range', path: ['a', 1], found: '-1e999' },
  ])
})
