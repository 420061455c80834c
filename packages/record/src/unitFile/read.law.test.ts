import { expect, test } from 'vitest'
import { faultLines } from './faultWords.ts'
import { readUnitFile } from './read.ts'
import { mutated } from './testing/mutate.ts'
import { seeded } from './testing/random.ts'
import { EXAMPLE, FULL } from './testing/units.ts'

test('damaged files are each read or refused with words, and never break the reader', () => {
  const files = [EXAMPLE, JSON.stringify(FULL)]
  const counts = { read: 0, refused: 0 }
  for (let seed = 0; seed < 4000; seed++) {
    const text = mutated(files[seed % 2]!, seeded(seed))
    const result = readUnitFile(text)
    counts[result.ok ? 'read' : 'refused']++
    if (result.ok) continue
    const lines = faultLines(result.faults)
    expect(lines.length, `seed ${seed}`).toBeGreaterThan(0)
    for (const line of lines) expect(line, `seed ${seed}`).not.toMatch(/undefined|\[object|NaN where/)
  }
  // both ways out were taken often enough for this to say something
  expect(counts.read).toBeGreaterThan(200)
  expect(counts.refused).toBeGreaterThan(1000)
})
