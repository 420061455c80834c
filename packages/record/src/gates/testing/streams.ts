/** Random work on a unit: mostly the right way over it, with slips, on two or three devices over a bad line. */
import type { Happening } from '../../events/define.ts'
import type { Event } from '../../events/event.ts'
import { pick, type Random, seeded } from '../../unitFile/testing/random.ts'
import { headsOf, type Workbench, workbench } from './workbench.ts'

type Body = Happening['body']
const say = (type: string, body: Body): Happening => ({ type, version: 1, body })

type Plan = { face: string; holes: { hole: string; visit: number }[]; snug: boolean; passes: number }

/** The entries that state the unit, and what has to be done to it. */
function stated(random: Random): { start: Happening[]; plans: Plan[] } {
  const start: Happening[] = []
  const plans = (random() < 0.4 ? ['body', 'pan'] : ['pan']).map((face): Plan => {
    const holes = ['1', '2', '3']
      .slice(0, 2 + Math.floor(random() * 2))
      .map((hole, i) => ({ hole, visit: i === 2 && random() < 0.5 ? 2 : 1 }))
    const snug = random() < 0.4
    const passes = pick(random, [1, 2])
    const inside = face === 'body' && random() < 0.6 ? { inside: 'pan' } : {}
    start.push(say('face-described', { face, torque: 10, ...(snug ? { snug } : {}), ...inside }))
    for (const { hole, visit } of holes)
      start.push(
        say('hole-marked', {
          face,
          hole,
          thread: 'M6',
          ...(visit > 1 ? { visit } : {}),
          ...(random() < 0.3 ? { locates: true } : {}),
        }),
      )
    if (random() < 0.4) {
      // an order may leave bolts out
      const sequence = holes.map(({ hole }) => hole).filter((_, i) => i === 0 || random() < 0.9)
      const order = Array.from({ length: passes }, (_, i) => ({ share: (i + 1) / passes, sequence }))
      start.push(say('order-chosen', { face, name: 'the manual', passes: order }))
    }
    return { face, holes, snug, passes }
  })
  if (random() < 0.5)
    start.push(
      say('part-came-out', { part: 'ball', what: 'check ball', face: 'pan', ...(random() < 0.3 ? { hole: '1' } : {}) }),
    )
  if (random() < 0.3) start.push(say('plug-found', { plug: 'x1', socket: 's1' }))
  if (random() < 0.4)
    start.push(say('limit-stated', { reading: 'end play', least: 0.1, most: 0.3, unit: 'mm', source: 'manual' }))
  if (random() < 0.4)
    start.push(
      say('figure-taken', {
        reading: 'end play',
        when: 'before',
        value: 0.5,
        unit: 'mm',
        ...(random() < 0.6 ? { face: 'pan' } : {}),
      }),
    )
  if (random() < 0.4)
    start.push(
      say('job-planned', {
        job: 'filter',
        name: 'fit the filter',
        ...(random() < 0.6 ? { buries: pick(random, [['ball'], ['clean'], ['body', 'ball']]) } : {}),
        ...(random() < 0.4 ? { needs: [{ name: 'valves', what: 'signature' }] } : {}),
        ...(random() < 0.4 ? { face: pick(random, plans).face } : {}),
      }),
    )
  if (random() < 0.2)
    start.push(
      say('job-planned', { job: 'pan/place', needs: [{ name: 'valves', what: 'signature' }], buries: ['ball'] }),
    )
  if (random() < 0.2) start.push(say('job-planned', { job: 'clean', name: 'clean the case' }))
  if (random() < 0.3)
    start.push(
      say('instrument-checked', { instrument: 'w4', calibratedUntil: pick(random, ['2026-02-28', '2026-12-31']) }),
    )
  return { start, plans }
}

/** The bolts of a face through their rounds, and the face closed. */
function coverOn({ face, holes, snug, passes }: Plan, start: readonly Happening[]): Happening[] {
  const visits = [1, 2].map((visit) => holes.filter((hole) => hole.visit === visit)).filter(({ length }) => length > 0)
  const locating = (hole: string) =>
    start.some(
      ({ type, body }) => type === 'hole-marked' && body.face === face && body.hole === hole && body.locates === true,
    )
  return [
    ...visits.flatMap((visit) => {
      const first = visit.toSorted((a, b) => Number(locating(b.hole)) - Number(locating(a.hole)))
      return [
        ...first.flatMap(({ hole }) => [
          say('bolt-placed', { face, hole, kind: 'b1' }),
          say('hand-started', { face, hole }),
        ]),
        ...visit.map(({ hole }) => say('run-down', { face, hole })),
        ...(snug ? visit.map(({ hole }) => say('snugged', { face, hole })) : []),
        ...Array.from({ length: passes }, (_, i) =>
          visit.map(({ hole }) => torqued(face, hole, i + 1, i + 1 === passes)),
        ).flat(),
      ]
    }),
    say('face-closed', { face }),
  ]
}

/** It comes back and a face of it is opened again; what proved it is proven anew, too early, or not at all. */
function comesBack(random: Random, plans: readonly Plan[], start: readonly Happening[], back: string): Happening[] {
  const plan = pick(random, plans)
  const { face, holes } = plan
  const some = (share: number, happening: Happening): Happening[] => (random() < share ? [happening] : [])
  const jobs = start.flatMap(({ type, body: { job } }) =>
    type === 'job-planned' && (job === 'clean' || job === 'filter') ? [say('job-done', { job })] : [],
  )
  const read = (when: string): Happening =>
    say('figure-taken', {
      reading: 'end play',
      when,
      value: pick(random, [0.2, 0.2, 0.25]),
      unit: 'mm',
      ...(random() < 0.3 ? { face: pick(random, plans).face } : {}),
    })
  return [
    ...some(0.9, say('come-back-answered', { cameBack: back, found: 'a torn gasket' })),
    ...some(0.3, read('after')),
    ...jobs.flatMap((job) => some(0.2, job)),
    say('face-opened', { face, holes: holes.map(({ hole }) => hole) }),
    ...some(0.2, read('during')),
    ...jobs.flatMap((job) => some(0.7, job)),
    ...some(0.5, read('after')),
    ...coverOn(plan, start),
    ...jobs.flatMap((job) => some(0.2, job)),
    ...some(0.3, read('after')),
  ]
}

/** What would be done by someone who makes no slip. */
function rightWay({ plans }: { plans: Plan[] }, start: readonly Happening[]): Happening[] {
  const has = (type: string) => start.some((one) => one.type === type)
  const work = plans.flatMap((plan) => coverOn(plan, start))
  return [
    ...(has('part-came-out') ? [say('part-went-in', { part: 'ball' })] : []),
    ...(has('plug-found') ? [say('plug-placed', { plug: 'x1', socket: 's1' })] : []),
    ...(has('limit-stated')
      ? [say('figure-taken', { reading: 'end play', when: 'after', value: 0.2, unit: 'mm' })]
      : []),
    ...work,
    ...(start.some(({ body }) => body.job === 'clean') ? [say('job-done', { job: 'clean' })] : []),
    ...(start.some(({ body }) => body.job === 'filter')
      ? [say('step-signed', { step: 'valves', as: 'builder' }), say('job-done', { job: 'filter' })]
      : []),
  ]
}

function torqued(face: string, hole: string, pass: number, final: boolean, more: Body = {}): Happening {
  return say('pass-torqued', {
    face,
    hole,
    pass,
    final,
    torque: final ? 10 : 5,
    tool: { name: 'wrench', number: 'w4' },
    ...more,
  })
}

/** Something that comes between: felt, undone, overridden, opened, released too early. */
function between(random: Random, plans: readonly Plan[], made: readonly Event[]): Happening {
  const { face, holes } = pick(random, plans)
  const { hole } = pick(random, holes)
  const gates = [
    'hand-start',
    'pass before',
    'closing step',
    'resistance',
    'torque out of band',
    'calibration',
    'release',
  ] as const
  const gate = pick(random, gates)
  const place = gate === 'release' ? pick(random, [{}, { face }]) : gate === 'closing step' ? { face } : { face, hole }
  const acts: (() => Happening)[] = [
    () => say('resistance-felt', { face, hole, feel: pick(random, ['gritty', 'springy']) }),
    () => say('resistance-cleared', { face, hole, found: 'sealant' }),
    () => say('gate-overridden', { gate, ...place, reason: 'seen to' }),
    () => say('gate-overridden', { gate, ...place, reason: 'seen to' }),
    () => say('bolt-backed-out', { face, hole }),
    () => say('undone', { event: pick(random, made).id }),
    () => say('undone', { event: pick(random, made).id }),
    () =>
      torqued(
        face,
        hole,
        pick(random, [1, 2, 3]),
        random() < 0.5,
        pick<Body>(random, [
          { torque: 12 },
          { torque: 9.5 },
          { wanted: 8 },
          { tool: { name: 'hand', byFeel: true } },
          { tool: { name: 'old', calibratedUntil: '2026-02-01' } },
        ]),
      ),
    () => say(pick(random, ['hand-started', 'run-down', 'snugged']), { face, hole }),
    () => say('turns-counted', { face, hole, turns: 8, seated: random() < 0.5 }),
    () => say('face-opened', { face, holes: [hole] }),
    () => say('face-closed', { face }),
    () => say('job-done', { job: pick(random, ['filter', 'clean']) }),
    () =>
      say('part-came-out', { part: pick(random, ['ball', 'spring']), what: pick(random, ['spring', 'bracket']), face }),
    () => say('part-written-off', { part: pick(random, ['ball', 'spring']), reason: 'lost' }),
    () => say('clock-started', { clock: 'c1', what: 'sealant open', minutes: 10, ...(random() < 0.5 ? { face } : {}) }),
    () => say('clock-stopped', { clock: 'c1' }),
    () => say('came-back', { complaint: 'weeps', ...(random() < 0.7 ? { toAnswer: true } : {}) }),
    () => {
      const backs = made.filter(({ type }) => type === 'came-back')
      return backs.length === 0
        ? say('came-back', { complaint: 'weeps', toAnswer: true })
        : say('come-back-answered', { cameBack: pick(random, backs).id, found: 'a torn gasket' })
    },
    () => say('reading-waived', { reading: 'end play', reason: 'shim on order' }),
    () =>
      say('figure-taken', {
        reading: 'end play',
        when: pick(random, ['during', 'after']),
        value: pick(random, [0.2, 0.4]),
        unit: 'mm',
        face,
      }),
    () => say('face-released', { face, ...(random() < 0.5 ? { onlyPerson: true } : {}) }),
    () => say('hole-struck-out', { face, hole }),
    () =>
      say('step-signed', {
        step: 'unit',
        as: pick(random, ['builder', 'checker']),
        ...(random() < 0.3 ? { face } : {}),
      }),
  ]
  return pick(random, acts)()
}

export type Stream = { bench: Workbench /** Steps in which the unit was released. */; released: number }

/** One stream. Some have no slip at all, so that there are units that may be released. */
export function stream(seed: number): Stream {
  const random = seeded(seed)
  const bench = workbench()
  const devices = pick(random, [1, 2, 3])
  const slips = pick(random, [0, 0.1, 0.35])
  const isOnline = random() < 0.4
  const { start, plans } = stated(random)
  const waiting: { to: number; event: Event }[] = []
  const does = (device: number, happening: Happening, who?: string): void => {
    const event = bench.does(device, happening, who === undefined ? {} : { who })
    for (let to = 0; to < devices; to++) if (to !== device) waiting.push({ to, event })
    while (waiting.length > 0 && (isOnline || random() < 0.5)) {
      // each device gets the entries of another in turn, but not those of two in the order in which they were made
      const [{ to }] = isOnline ? [waiting[0]!] : [pick(random, waiting)]
      const from = isOnline
        ? waiting[0]!
        : pick(
            random,
            waiting.filter((one) => one.to === to),
          )
      const next = waiting.findIndex((one) => one.to === to && one.event.device === from.event.device)
      bench.tell(to, waiting[next]!.event)
      waiting.splice(next, 1)
    }
  }
  for (const happening of start) does(0, happening)
  for (let to = 1; to < devices; to++) bench.tell(to)
  waiting.length = 0
  let released = 0
  const release = (device: number) => {
    released++
    const onlyPerson = random() < 0.2 ? { onlyPerson: true } : {}
    const heads = random() < 0.9 ? headsOf(bench.knowledge(device)) : {}
    does(device, say('unit-released', { heads, record: 'c'.repeat(64), ...onlyPerson }))
  }
  for (const happening of rightWay({ plans }, start)) {
    const device = Math.floor(random() * devices)
    const { face, hole } = happening.body
    if (random() < slips / 2 && hole !== undefined)
      does(
        device,
        say('gate-overridden', {
          gate: pick(random, ['hand-start', 'pass before', 'resistance']),
          face: face!,
          hole,
          reason: 'seen',
        }),
      )
    if (random() >= slips / 2) does(device, happening)
    while (random() < slips) does(Math.floor(random() * devices), between(random, plans, bench.made))
    if (random() < slips / 6) release(device)
  }
  const last = Math.floor(random() * devices)
  if (random() < 0.8) bench.tell(last)
  does(last, say('step-signed', { step: 'unit', as: 'checker' }), random() < 0.8 ? 'dora' : undefined)
  release(last)
  if (random() < 0.15) {
    if (random() < 0.8) bench.tell(last)
    does(last, say('came-back', { complaint: 'weeps', ...(random() < 0.9 ? { toAnswer: true } : {}) }))
    for (const happening of comesBack(random, plans, start, bench.made.at(-1)!.id))
      does(random() < 0.9 ? last : Math.floor(random() * devices), happening)
    if (random() < 0.8) bench.tell(last)
    does(last, say('step-signed', { step: 'unit', as: 'checker' }), random() < 0.9 ? 'dora' : undefined)
    release(last)
  }
  return { bench, released }
}
