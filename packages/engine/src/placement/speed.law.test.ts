import { expect, test } from 'vitest'
import { place } from './place.ts'
import { generateUnit } from './testing/generateUnit.ts'

/** The goal stands in the benchmark; a method that has slipped takes minutes, and the time limit of a test ends it. */
test('[PL8] every hole of a face of 40 holes and 6 kinds is answered', async () => {
  for (let seed = 1; seed <= 5; seed += 1) {
    const { unit } = generateUnit(seed, { holes: 40, kinds: 6, coupled: false, stated: true })
    const { faces } = await place(unit)
    expect(
      faces.flatMap(({ holes }) => Object.keys(holes)),
      `seed ${seed}`,
    ).toHaveLength(40)
  }
})
