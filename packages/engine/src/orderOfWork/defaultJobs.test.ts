import { expect, test } from 'vitest'
import type { Face, Job, Unit } from '../unit.ts'
import { defaultJobs, jobsOf } from './defaultJobs.ts'
import { steps } from './steps.ts'

const lid = (more: Partial<Face> = {}): Face => ({
  id: 'lid',
  torque: 10,
  holes: [
    { id: '1', thread: 'M6', locates: true },
    { id: '2', thread: 'M6' },
    { id: '3', thread: 'M6', visit: 2 },
  ],
  kinds: [{ id: 'b', thread: 'M6', count: 3 }],
  ...more,
})
const unit = (faces: Face[], more: Partial<Unit> = {}): Unit => ({ gripbook: 'unit/1', faces, ...more })
const orderOf = (given: Unit) => steps(given).order.map(({ job }) => job)
const jobIn = (given: Unit, id: string): Job => jobsOf(given).find((job) => job.id === id)!

test('a face alone goes back in the trade’s order, visit after visit', () => {
  expect(orderOf(unit([lid()]))).toEqual([
    'lid/clean',
    'lid/tray',
    'lid/dry fit',
    'lid/place',
    'lid/hand-start',
    'lid/run down',
    'lid/pass 1',
    'lid/pass 2',
    'lid/pass 3',
    'lid/hand-start 2',
    'lid/run down 2',
    'lid/pass 1 of visit 2',
    'lid/pass 2 of visit 2',
    'lid/pass 3 of visit 2',
    'lid/witness marks',
    'lid/close',
    'readings',
  ])
  expect(jobIn(unit([lid()]), 'lid/hand-start').name).toBe('Start all bolts of lid by hand, first 1')
})

test('a face inside another is closed before the other’s cover goes on', () => {
  const order = orderOf(unit([lid({ id: 'pan' }), lid({ inside: 'pan' })]))
  expect(order.indexOf('lid/close')).toBeLessThan(order.indexOf('pan/place'))
  const circle = steps(unit([lid({ id: 'pan', inside: 'lid' }), lid({ inside: 'pan' })]))
  expect(circle.feasible).toBe(false)
  expect(circle.clashes[0]!.what).toBe('circle')
})

test('parts stand where they belong: inside before the cover, at a bolt before it is started, outside after the close', () => {
  const parts: Unit['parts'] = [
    { id: 'magnet', what: 'other', face: 'lid' },
    { id: 'strainer', what: 'filter', face: 'lid', hole: '3' },
    { id: 'plug', what: 'connector', face: 'lid' },
    { id: 'g', what: 'gasket', face: 'lid', in: true },
  ]
  const order = orderOf(unit([lid()], { parts }))
  const at = (job: string) => order.indexOf(job)
  expect(at('part/magnet')).toBeLessThan(at('lid/place'))
  expect(at('part/magnet')).toBeGreaterThan(at('lid/clean'))
  expect(at('part/strainer')).toBeGreaterThan(at('lid/pass 3'))
  expect(at('part/strainer')).toBeLessThan(at('lid/hand-start 2'))
  expect(at('part/plug')).toBeGreaterThan(at('lid/close'))
  expect(at('part/plug')).toBeLessThan(at('readings'))
  expect(order).not.toContain('part/g')
  expect(defaultJobs(unit([lid()]), { plugs: ['x1'] }).at(-2)).toMatchObject({ id: 'plug/x1', after: ['lid/close'] })
})

test('sealant is opened when all is ready, and closed by the last pass or by the cover, as its sheet says', () => {
  const wet = (sealant: Face['sealant']) => steps(unit([lid({ sealant: sealant! })]))
  const [torqued] = wet({ name: 'silicone', minutes: 10 }).windows
  expect(torqued).toMatchObject({ opens: 'lid/sealant', until: ['lid/pass 3'], minutes: 10 })
  expect(torqued!.jobs).toEqual([
    'lid/place',
    'lid/hand-start',
    'lid/run down',
    'lid/pass 1',
    'lid/pass 2',
    'lid/pass 3',
  ])
  expect(torqued!.before).toEqual(['lid/clean', 'lid/tray', 'lid/dry fit'])
  expect(torqued!.chance).toBeGreaterThan(0.5)
  expect(wet({ minutes: 3, until: 'joined' }).windows[0]).toMatchObject({ until: ['lid/place'], jobs: ['lid/place'] })
  const tacky = wet({ minutes: 20, least: 10, until: 'joined' })
  expect(tacky.feasible).toBe(true)
  expect(tacky.order.find(({ job }) => job === 'lid/place')!.wait).toBe(10)
  // torqued before 20 min are over, but not joined before 10: all from the cover to the last pass has 10 min
  const standing = wet({ minutes: 20, least: 10, until: 'torqued' }).windows[0]!
  expect(standing.jobs).toEqual(torqued!.jobs)
  expect(standing.chance).toBeCloseTo(wet({ minutes: 10 }).windows[0]!.chance!, 12)
  const hopeless = wet({ minutes: 10 + torqued!.takes.minutes / 2, least: 10, until: 'torqued' })
  expect(hopeless.feasible).toBe(false)
  expect(hopeless.windows[0]!.chance).toBeLessThan(0.01)
})

test('what is known not to be ready is said so: too few bolts, a torque that nobody stated, a bracket', () => {
  const { torque: _, ...plain } = lid()
  const short: Face = { ...plain, kinds: [{ id: 'b', thread: 'M6', count: 2 }] }
  short.holes[1]!.bracket = 2
  expect(steps(unit([short])).notReady).toEqual([
    { job: 'lid/tray', need: { name: '3 bolts for lid', what: 'part', ready: false } },
    { job: 'lid/hand-start', need: { name: 'bracket of hole 2', what: 'part' } },
    { job: 'lid/pass 1', need: { name: 'torque from the manual for hole 1, 2' } },
    { job: 'lid/pass 1 of visit 2', need: { name: 'torque from the manual for hole 3' } },
  ])
})

test('[WO7] a job of the same id changes the fields that it gives, another is added, and one may be left out', () => {
  const changed = unit([lid()], {
    jobs: [
      { id: 'lid/tray', minutes: 9, after: ['lid/dry fit'], needs: [] },
      { id: 'photograph', after: ['lid/close'] },
      { id: 'lid/witness marks', skip: true },
      { id: 'lid/clean', done: true },
    ],
  })
  expect(jobIn(changed, 'lid/tray')).toMatchObject({ minutes: 9, needs: [], name: expect.stringContaining('Lay out') })
  const order = orderOf(changed)
  expect(order.indexOf('lid/tray')).toBeGreaterThan(order.indexOf('lid/dry fit'))
  expect(order.indexOf('photograph')).toBeGreaterThan(order.indexOf('lid/close'))
  expect(order.indexOf('lid/close')).toBeGreaterThan(order.indexOf('lid/pass 3 of visit 2'))
  expect(order).not.toContain('lid/witness marks')
  expect(order).not.toContain('lid/clean')
})

test('bolts that a stated order leaves out are tightened after it; a face without bolts is joined when its cover is on', () => {
  const { torque: _, ...face } = lid({
    holes: [
      { id: '1', thread: 'M6', torque: 10 },
      { id: '2', thread: 'M6' },
    ],
    order: [{ share: 1, sequence: ['1'] }],
  })
  const passes = orderOf(unit([face])).filter((job) => job.startsWith('lid/pass'))
  expect(passes.map((job) => jobIn(unit([face]), job).name)).toEqual([
    'Pass 1 over lid, 100 %',
    'Pass 2 over hole 2 of lid, 30 %',
    'Pass 3 over hole 2 of lid, 60 %',
    'Pass 4 over hole 2 of lid, 100 %',
  ])
  expect(jobIn(unit([face]), 'lid/pass 1').needs).toBeUndefined()
  expect(jobIn(unit([face]), 'lid/pass 2').needs).toEqual([{ name: 'torque from the manual for hole 2' }])
  const bare = unit([lid({ holes: [], sealant: { name: 'sealant', minutes: 10 } })])
  expect(jobIn(bare, 'lid/sealant').window!.until).toEqual(['lid/place'])
})

test('bolts that one tool reaches are run down together, a stated order of a pass is kept whatever the tool', () => {
  const reach = (runDown: string[], final: string[]) => ({ runDown, final })
  const face = lid({
    holes: [
      { id: '1', thread: 'M6', reach: reach(['socket'], ['wrench']) },
      { id: '2', thread: 'M6', reach: reach(['ratchet'], ['crow-foot']) },
      { id: '3', thread: 'M6', reach: reach(['ratchet', 'socket'], ['wrench', 'crow-foot']) },
    ],
  })
  expect(jobIn(unit([face]), 'lid/run down').tools).toEqual([
    { stage: 'running down', any: ['socket'] },
    { stage: 'running down', any: ['ratchet'] },
  ])
  expect(jobIn(unit([face]), 'lid/pass 1').tools!.map(({ any }) => any)).toEqual([['wrench'], ['crow-foot']])
  const stated = { ...face, order: [{ share: 1, sequence: ['1', '2', '1', '3'] }] }
  expect(jobIn(unit([stated]), 'lid/pass 1').tools!.map(({ any }) => any)).toEqual([
    ['wrench'],
    ['crow-foot'],
    ['wrench'],
  ])
})
