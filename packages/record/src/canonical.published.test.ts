import fc from 'fast-check'
import { expect, test } from 'vitest'
import { canonical } from './canonical.ts'
import type { Json } from './events/json.ts'

test('RFC 8785, 3.2.2: the sample object gives the sample text', () => {
  const sample = JSON.parse(
    '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/","literals":[null,true,false]}',
  ) as Json
  expect(canonical(sample)).toBe(
    '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
  )
})

test('RFC 8785, 3.2.3: names are sorted by their UTF-16 units', () => {
  const names = { '\u20ac': 1, '\r': 2, '\ufb33': 3, '1': 4, '\u{1f600}': 5, '\u0080': 6, '\u00f6': 7 }
  expect(Object.keys(JSON.parse(canonical(names)) as object).length).toBe(7)
  expect([...canonical(names).matchAll(/:(\d)/g)].map((match) => match[1]).join('')).toBe('2467153')
})

test('RFC 8785, appendix B: numbers', () => {
  const samples: [number, string][] = [
    [0, '0'],
    [-0, '0'],
    [5e-324, '5e-324'],
    [-1.7976931348623157e308, '-1.7976931348623157e+308'],
    [9007199254740992, '9007199254740992'],
    [295147905179352830000, '295147905179352830000'],
    [9.999999999999997e22, '9.999999999999997e+22'],
    [1e23, '1e+23'],
    [999999999999999700000, '999999999999999700000'],
    [0.000001, '0.000001'],
    [333333333.3333332, '333333333.3333332'],
    [1424953923781206.2, '1424953923781206.2'],
  ]
  for (const [number, text] of samples) expect(canonical(number)).toBe(text)
})

test('what has no canonical form is refused', () => {
  expect(() => canonical('\ud800')).toThrow('surrogate')
  expect(() => canonical({ '\udc00': 1 })).toThrow('surrogate')
  expect(() => canonical([Number.NaN])).toThrow('cannot hold')
})

test('the text reads back as the same value, whatever the order of its names', () => {
  fc.assert(
    fc.property(fc.jsonValue({ noUnicodeString: false }), (value) => {
      const text = canonical(value as Json)
      expect(canonical(JSON.parse(text) as Json)).toBe(text)
    }),
    { seed: 12, numRuns: 500 },
  )
})
