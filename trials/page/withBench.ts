import { afterAll, beforeAll, beforeEach } from 'vitest'
import { type Bench, CHROMIUM, openBench } from './bench.ts'

/** For a file of trials: opens a bench before them and closes it after; without a browser they skip and say so. */
export function withBench(opened: (bench: Bench) => void): void {
  let bench: Bench | undefined
  beforeEach(({ skip }) => {
    if (CHROMIUM === undefined) skip('Chromium is not installed: apt-get install --no-install-recommends chromium')
  })
  beforeAll(async () => {
    if (CHROMIUM === undefined) return
    bench = await openBench()
    opened(bench)
  })
  afterAll(async () => {
    await bench?.close()
  })
}
