import { expect, test } from 'vitest'
import { skipWithoutDebianServer } from '../../packages/server/src/testing/debianServer.ts'
import type { Kind } from './places.ts'
import { killTrial } from './trial.ts'

const KILLS = 10

for (const [kind, seed] of [
  ['embedded', 1],
  ['server', 2],
] as [Kind, number][])
  test(`[RE1] ${kind}: what was acknowledged survives ${KILLS} kills at random moments`, async (context) => {
    if (kind === 'server') skipWithoutDebianServer(context)
    const outcome = await killTrial(kind, KILLS, seed, () => {})
    expect(outcome.kills).toBe(KILLS)
    expect(outcome.acknowledged, 'something was at stake').toBeGreaterThan(100)
  })
