import type { Unit } from '@gripbook/engine'
import { expect, test } from 'vitest'
import { main } from '../main.ts'
import { testWorld } from '../testing/testWorld.ts'

const LID: Unit = {
  gripbook: 'unit/1',
  faces: [
    {
      id: 'lid',
      torque: 10,
      holes: [{ id: '1', thread: 'M6', reach: { final: ['crow'] } }],
      kinds: [{ id: 'b', thread: 'M6', count: 1 }],
      sealant: { name: 'silicone', minutes: 10 },
    },
  ],
  tools: [{ id: 'crow', form: 'crow-foot', lever: 300, reach: 100 }],
}

async function run(unit: Unit, ...options: string[]) {
  const world = testWorld({ 'unit.json': JSON.stringify(unit) })
  const status = await main(['steps', 'unit.json', ...options], world)
  return { status, ...world.said }
}

test('an order in words, by tool, with windows and reach, ends with 0', async () => {
  const { status, out, err } = await run(LID)
  expect({ status, err }).toEqual({ status: 0, err: '' })
  const said = out.replace(/\s+/g, ' ')
  expect(said).toContain('No order has fewer together.')
  expect(said).toContain('lid/sealant (silicone) lasts 10 min, until lid/pass 3.')
  expect(said).toContain('Chance of closing in time:')
  expect(said).toContain('crow: set 7.5 N·m for 10 N·m')
  for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
})

test('a tool without a reading is told once, with what follows from it', async () => {
  const { out } = await run({ ...LID, tools: [{ id: 'crow', form: 'ratchet wrench' }] })
  expect(out.replace(/\s+/g, ' ')).toContain('Hole 1 of lid: crow has no reading; only by feel.')
})

test('--json gives the whole answer', async () => {
  const { status, out } = await run(LID, '--json', '--tool', 'crow')
  expect(status).toBe(0)
  expect(JSON.parse(out)).toMatchObject({ gripbook: 'steps/1', feasible: true, proven: true })
})

test('a circle ends with 1, with each reason', async () => {
  const { status, out } = await run({
    ...LID,
    jobs: [
      { id: 'a', after: ['lid/close'] },
      { id: 'lid/clean', after: ['b'] },
      { id: 'b', buries: ['a'] },
    ],
  })
  expect(status).toBe(1)
  expect(out).toContain('No order keeps all of it.')
  expect(out.replace(/\s+/g, ' ')).toContain('b after a, because b buries a')
})

test('what is said not to be ready ends with 1', async () => {
  const { status, out } = await run({ ...LID, jobs: [{ id: 'lid/place', needs: [{ name: 'dowels', ready: false }] }] })
  expect(status).toBe(1)
  expect(out).toContain('dowels, before lid/place')
})

test('a name that leads nowhere ends with 2, with its place in the file', async () => {
  const { status, out, err } = await run({ ...LID, jobs: [{ id: 'a', after: ['lid/clean', 'lid/clos'] }] })
  expect({ status, out }).toEqual({ status: 2, out: '' })
  expect(err).toContain('jobs[0].after[1]: there is no job "lid/clos" here. Did you mean "lid/close"?')
})

test('wrong options and files end with 2', async () => {
  expect((await run(LID, '--jsn')).err).toContain('Did you mean --json?')
  const world = testWorld()
  expect(await main(['steps'], world)).toBe(2)
  expect(world.said.err).toContain('Which file? gripbook steps FILE')
})

test('--help tells all options, with 0', async () => {
  const { status, out } = await run(LID, '--help')
  expect(status).toBe(0)
  for (const option of ['--tool', '--side', '--json']) expect(out).toContain(option)
  for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
})
