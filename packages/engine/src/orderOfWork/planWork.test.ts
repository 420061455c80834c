import { describe, expect, test } from 'vitest'
import type { Job } from '../unit.ts'
import { planWork } from './planWork.ts'

const orderOf = (jobs: Job[], asked = {}) => planWork(jobs, asked).order.map(({ job }) => job)

test('what a job buries is done before it, whether a job, a part or all work on a face', () => {
  const jobs: Job[] = [
    { id: 'pan on', face: 'pan', buries: ['strainer', 'valve block', 'magnet'] },
    { id: 'magnet' },
    { id: 'part/strainer' },
    { id: 'block on', face: 'valve block' },
  ]
  const known = { faces: ['pan', 'valve block'], parts: ['strainer'] }
  const plan = planWork(jobs, { known })
  expect(plan.order.at(-1)!.job).toBe('pan on')
  expect(plan.unknownNames).toEqual([])
  expect(plan.closing).toEqual([
    { job: 'pan on', unfinished: ['part/strainer', 'block on', 'magnet'], unread: [], unsigned: [] },
  ])
})

test('work with the tool in the hand comes first, and a turn counts as a change does', () => {
  const jobs: Job[] = [
    { id: 'a', tools: [{ any: ['socket'] }], side: 'up' },
    { id: 'b', tools: [{ any: ['crow-foot'] }], side: 'down' },
    { id: 'c', tools: [{ any: ['socket', 'crow-foot'] }], side: 'down' },
  ]
  expect(planWork(jobs)).toMatchObject({ toolChanges: 1, turns: 1, proven: true })
  expect(orderOf(jobs, { tool: 'crow-foot', side: 'down' })).toEqual(['b', 'c', 'a'])
})

test('a job of two stages begins with one tool and ends with another', () => {
  const plan = planWork([
    {
      id: 'bolt',
      tools: [
        { stage: 'running down', any: ['ratchet wrench'] },
        { stage: 'final', any: ['crow-foot'] },
      ],
    },
    { id: 'last', tools: [{ any: ['crow-foot'] }] },
    { id: 'first', tools: [{ any: ['ratchet wrench'] }] },
  ])
  expect(plan.order.map(({ job, tools }) => [job, ...tools])).toEqual([
    ['first', 'ratchet wrench'],
    ['bolt', 'ratchet wrench', 'crow-foot'],
    ['last', 'crow-foot'],
  ])
  expect(plan.toolChanges).toBe(1)
})

test('[WO5] nothing else is done while sealant is open, and what it waits for is done before', () => {
  const jobs: Job[] = [
    { id: 'bead', minutes: 2, window: { what: 'silicone', minutes: 10, until: ['torque'] } },
    { id: 'sensor', minutes: 1 },
    { id: 'cover', after: ['bead'], minutes: 1 },
    {
      id: 'torque',
      after: ['cover', 'wrench'],
      minutes: 4,
      needs: [{ name: 'wrench set', what: 'tool', ready: false }],
    },
    { id: 'wrench', minutes: 1, needs: ['dial'] },
  ]
  const plan = planWork(jobs)
  const order = plan.order.map(({ job }) => job)
  expect(order.slice(order.indexOf('bead'))).toSatisfy((rest: string[]) =>
    ['bead,cover,torque', 'bead,cover,torque,sensor'].includes(rest.join()),
  )
  expect(plan.windows).toMatchObject([
    { opens: 'bead', jobs: ['cover', 'torque'], takes: { minutes: 5 }, before: ['wrench'], minutesUnknown: [] },
  ])
  expect(plan.windows[0]!.notReady).toEqual([
    { job: 'torque', need: { name: 'wrench set', what: 'tool', ready: false } },
  ])
  expect(plan.windows[0]!.chance).toBeGreaterThan(0.99)
})

test('a window too short for what must be done in it is a clash, with both figures', () => {
  const plan = planWork([
    { id: 'bead', window: { minutes: 3, until: ['torque'] } },
    { id: 'torque', minutes: 4 },
  ])
  expect(plan.feasible).toBe(false)
  expect(plan.clashes).toEqual([{ what: 'window', opens: 'bead', jobs: ['torque'], takes: 4, lasts: 3 }])
  expect(plan.order).toHaveLength(2)
})

test('soaking is filled with other work, and only what is left of it is waited for', () => {
  const plan = planWork([
    { id: 'other', minutes: 7 },
    { id: 'soak', minutes: 1, window: { what: 'plates soaking', least: 10, until: ['stack'] } },
    { id: 'stack', minutes: 5 },
  ])
  expect(plan.order.map(({ job, wait }) => [job, wait])).toEqual([
    ['soak', 0],
    ['other', 0],
    ['stack', 3],
  ])
  expect(plan).toMatchObject({ waiting: 3, minutes: 16 })
})

test('a window that runs already is finished first, from where its clock stands', () => {
  const jobs: Job[] = [
    { id: 'bead', done: true, window: { minutes: 10, until: ['torque'] } },
    { id: 'other', minutes: 2 },
    { id: 'torque', minutes: 4 },
  ]
  expect(orderOf(jobs, { elapsed: { bead: 2 } })).toEqual(['torque', 'other'])
  expect(planWork(jobs, { elapsed: { bead: 7 } }).clashes).toMatchObject([{ what: 'window', takes: 11, lasts: 10 }])
})

test('[WO1] two windows that run already are both closed before anything else, within both their times', () => {
  const jobs: Job[] = [
    { id: 'other', minutes: 1 },
    { id: 'bead a', done: true, window: { minutes: 10, until: ['torque a'] } },
    { id: 'bead b', done: true, window: { minutes: 6, until: ['torque b'] } },
    { id: 'torque a', minutes: 4 },
    { id: 'torque b', minutes: 5 },
  ]
  const plan = planWork(jobs)
  expect(plan.order.map(({ job }) => job)).toEqual(['torque b', 'torque a', 'other'])
  expect(plan).toMatchObject({ feasible: true, clashes: [] })
  const late = planWork(jobs, { elapsed: { 'bead a': 2 } })
  expect(late.order).toHaveLength(3)
  expect(late.clashes).toMatchObject([{ what: 'window' }])
})

test('what is left out hands on what it came after, and what is done is not planned', () => {
  const jobs: Job[] = [
    { id: 'c', after: ['b'] },
    { id: 'b', after: ['a'], skip: true },
    { id: 'a' },
    { id: 'z', done: true },
  ]
  expect(orderOf(jobs)).toEqual(['a', 'c'])
})

describe('what is told beside the order', () => {
  test('a name that leads nowhere, by its job and field', () => {
    const plan = planWork([{ id: 'a', after: ['b'], buries: ['c'], window: { minutes: 1, until: ['d'] } }])
    expect(plan.unknownNames).toEqual([
      { job: 'a', field: 'after', name: 'b' },
      { job: 'a', field: 'buries', name: 'c' },
      { job: 'a', field: 'until', name: 'd' },
    ])
  })
  test('[WO6] a closing step: unfinished, unread, unsigned', () => {
    const jobs: Job[] = [
      { id: 'close', buries: ['stack'] },
      {
        id: 'stack',
        done: true,
        needs: [{ name: 'end play', what: 'reading' }, { name: 'checker', what: 'signature', ready: false }, 'jelly'],
      },
    ]
    expect(planWork(jobs).closing).toEqual([
      {
        job: 'close',
        unfinished: [],
        unread: [{ job: 'stack', need: { name: 'end play', what: 'reading' } }],
        unsigned: [{ job: 'stack', need: { name: 'checker', what: 'signature', ready: false } }],
      },
    ])
  })
  test('[WO6] a step that was closed over unfinished work', () => {
    const plan = planWork([{ id: 'close', done: true, buries: ['stack'] }, { id: 'stack' }])
    expect(plan.clashes).toEqual([{ what: 'closed over', job: 'close', unfinished: ['stack'] }])
    expect(plan.feasible).toBe(false)
  })
  test('jobs in a circle, each with its reason', () => {
    const plan = planWork([
      { id: 'a', after: ['c'] },
      { id: 'b', after: ['a'], buries: ['d'] },
      { id: 'c', after: ['b'] },
      { id: 'd', after: ['b'] },
    ])
    expect(plan.order).toEqual([])
    expect(plan.clashes).toEqual([
      {
        what: 'circle',
        reasons: [
          { earlier: 'd', later: 'b', because: 'buries', what: 'd' },
          { earlier: 'b', later: 'd', because: 'after' },
        ],
      },
    ])
  })
})
