import { expect, test } from 'vitest'
import { seededRandom } from '../maths/random.ts'
import type { Before } from './answer.ts'
import { shortestCircles } from './circle.ts'

/** Length of the shortest circle by trying every sequence of different jobs. */
function shortestByTrying(count: number, pairs: ReadonlySet<string>): number | undefined {
  let best: number | undefined
  const go = (path: number[]) => {
    if (best !== undefined && path.length >= best) return
    if (pairs.has(`${path.at(-1)} ${path[0]}`)) best = path.length
    for (let next = 0; next < count; next += 1)
      if (!path.includes(next) && pairs.has(`${path.at(-1)} ${next}`)) go([...path, next])
  }
  for (let first = 0; first < count; first += 1) go([first])
  return best
}

test('[WO3] 500 knots of jobs: a clash is a true circle, none is shorter, and there is one just when there is any', () => {
  let circles = 0
  for (let seed = 1; seed <= 500; seed += 1) {
    const random = seededRandom(seed)
    const count = 3 + Math.floor(random() * 5)
    const pairs = new Set<string>()
    const reasons: Before[] = []
    for (let a = 0; a < count; a += 1)
      for (let b = 0; b < count; b += 1)
        if (a !== b && random() < 0.25) {
          pairs.add(`${a} ${b}`)
          reasons.push({ earlier: `${a}`, later: `${b}`, because: 'after' })
        }
    const found = shortestCircles(reasons)
    const least = shortestByTrying(count, pairs)
    const said = `seed ${seed}`
    expect(found[0]?.length, said).toBe(least)
    if (least !== undefined) circles += 1
    const knots = new Set<string>()
    for (const circle of found) {
      circle.forEach(({ earlier, later }, i) => {
        expect(pairs.has(`${earlier} ${later}`), said).toBe(true)
        expect(circle[(i + 1) % circle.length]!.earlier, said).toBe(later)
        expect(knots.has(earlier), said).toBe(false)
      })
      for (const { earlier } of circle) knots.add(earlier)
    }
  }
  expect(circles).toBeGreaterThan(200)
})
