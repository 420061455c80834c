import type { BodyOf, EventType } from '../events/catalogue.ts'
import { pick, type Random } from '../unitFile/testing/random.ts'

const FACES = ['pan', 'pump-cover']
const HOLES = ['1', '2', '3']
const KINDS = ['b1', 'b2']
const SHA = ['a', 'b'].map((digit) => digit.repeat(64))
const THREADS = ['M6', 'M8', ['M6', 'M8']]

/** A body of every type, drawn from few names and few figures, so that entries meet each other often. */
export const SAMPLES: { [T in EventType]: (random: Random) => BodyOf<T> } = {
  'unit-taken-in': (r) => ({
    name: pick(r, ['gearbox 12', 'gearbox 13']),
    complaint: 'slips when warm',
    job: '2026-14',
  }),
  'unit-described': (r) =>
    r() < 0.7
      ? { history: pick(r, ['unknown', 'never opened'] as const), model: 'four-speed' }
      : { unknown: ['note', 'model'] },
  'opened-before-seen': (r) => ({ ...(r() < 0.5 ? { face: pick(r, FACES) } : {}), sign: 'sealant of two colours' }),
  photographed: (r) => ({
    photograph: pick(r, SHA),
    width: 4000,
    height: 3000,
    face: pick(r, FACES),
    caption: 'from the left',
  }),
  'face-photographed': (r) => ({ face: pick(r, FACES), photograph: pick(r, SHA), width: 4000, height: 3000 }),
  'face-described': (r) => ({
    face: pick(r, FACES),
    torque: pick(r, [8, 10, { value: 8, unit: 'lbf·ft' as const }]),
    ...(r() < 0.3 ? { order: [{ share: 1, sequence: [...HOLES].slice(0, 1 + Math.floor(r() * 3)) }] } : {}),
    ...(r() < 0.3 ? { bed: { stiffness: pick(r, [5, { atLeast: 2 }]) }, embedment: { roughness: 6.3 } } : {}),
    ...(r() < 0.3 ? { unknown: ['gasket', 'snug'] } : {}),
  }),
  'face-struck-out': (r) => ({ face: pick(r, FACES), reason: 'entered twice' }),
  'hole-marked': (r) => ({
    face: pick(r, FACES),
    hole: pick(r, HOLES),
    mark: [Math.floor(r() * 100), 20],
    thread: pick(r, THREADS),
    threadDepth: 14,
    bottomDepth: { atLeast: 16 },
  }),
  'hole-moved': (r) => ({ face: pick(r, FACES), hole: pick(r, HOLES), mark: [Math.floor(r() * 4), 7] }),
  'hole-described': (r) => ({
    face: pick(r, FACES),
    hole: pick(r, HOLES),
    bracket: pick(r, [0, 2, { value: 0.125, unit: 'in' as const }]),
    ...(r() < 0.3 ? { unknown: ['mouth', 'bracket'] } : {}),
  }),
  'hole-struck-out': (r) => ({ face: pick(r, FACES), hole: pick(r, HOLES) }),
  'tray-laid-out': (r) => (r() < 0.5 ? {} : { face: pick(r, FACES) }),
  'kind-laid-out': (r) => ({
    ...(r() < 0.3 ? {} : { face: pick(r, FACES) }),
    kind: pick(r, KINDS),
    thread: pick(r, THREADS),
    length: pick(r, [40, 45]),
    count: pick(r, [2, 4]),
  }),
  'kind-described': (r) => ({
    face: pick(r, FACES),
    kind: pick(r, KINDS),
    washer: pick(r, [1.6, { thickness: 2, captive: true }]),
  }),
  'kind-struck-out': (r) => ({ face: pick(r, FACES), kind: pick(r, KINDS) }),
  'bolt-found': (r) => ({
    face: pick(r, FACES),
    hole: pick(r, HOLES),
    kind: pick(r, [...KINDS, 'none']),
    condition: 'bent',
  }),
  'bolts-written-off': (r) => ({ face: pick(r, FACES), kind: pick(r, KINDS), count: 1, reason: 'stretched' }),
  'bolts-added': (r) => ({ face: pick(r, FACES), kind: pick(r, KINDS), count: 2, from: 'new' }),
  'part-came-out': (r) => ({
    part: pick(r, ['p1', 'p2']),
    what: 'check ball',
    face: pick(r, FACES),
    condition: pick(r, ['good', 'pitted']),
  }),
  'part-went-in': (r) => ({ part: pick(r, ['p1', 'p2']) }),
  'part-replaced': (r) => ({ part: pick(r, ['p1', 'p2']), by: 'new one' }),
  'part-written-off': (r) => ({ part: pick(r, ['p1', 'p2']), reason: 'worn' }),
  'plug-found': (r) => ({ plug: 'x1', socket: pick(r, ['s1', 's2']), colours: ['BN', 'GNYE'] }),
  'plug-placed': (r) => ({ plug: 'x1', socket: pick(r, ['s1', 's2']) }),
  'instrument-checked': (r) => ({
    instrument: 'w4',
    name: 'torque wrench',
    calibratedUntil: pick(r, ['2026-12-31', '2027-06-30']),
  }),
  'reading-taken': (r) => ({
    of:
      r() < 0.7
        ? { face: pick(r, FACES), hole: pick(r, HOLES), quantity: pick(r, ['grip', 'bottomDepth'] as const) }
        : r() < 0.5
          ? { face: pick(r, FACES), kind: pick(r, KINDS), quantity: 'length' }
          : { face: pick(r, FACES), quantity: 'gasket' },
    value: pick(r, [31.9, { value: 32, plusMinus: 0.1 }, { atLeast: 30 }, { value: 1.25, unit: 'in' as const }]),
    instrument: { name: 'depth gauge', number: '7', resolution: 0.01 },
  }),
  'figure-taken': (r) => ({
    reading: 'end play',
    when: pick(r, ['before', 'after'] as const),
    value: pick(r, [-0.2, 0.35]),
    unit: 'mm',
  }),
  'limit-stated': (r) => ({
    reading: 'end play',
    least: 0.1,
    most: pick(r, [0.3, 0.4]),
    unit: 'mm',
    source: 'manual, page 12',
  }),
  'reading-waived': () => ({ reading: 'end play', reason: 'new washer on order' }),
  'rank-stated': (r) => ({ face: pick(r, FACES), quantity: 'grip', less: pick(r, HOLES), more: pick(r, HOLES) }),
  'bolt-tried': (r) => ({ face: pick(r, FACES), trial: { hole: pick(r, HOLES), kind: pick(r, KINDS), turns: 7.5 } }),
  'note-written': (r) => ({ face: pick(r, FACES), text: 'weeps\nat the corner' }),
  decided: () => ({ decision: 'new filter', reason: 'metal in the old one' }),
  'part-chosen': (r) => ({ place: 'input shaft', part: pick(r, ['2.1', '2.2']), thickness: 2.1 }),
  'job-planned': (r) => ({
    job: 'filter',
    name: 'fit the filter',
    after: ['clean'],
    buries: pick(r, [['p1'], ['p2']]),
    minutes: 5,
    ...(r() < 0.3 ? { side: 'pan up', tools: [{ any: ['socket'] }], window: { minutes: 10, until: ['pan'] } } : {}),
    ...(r() < 0.2 ? { skip: true, needs: [{ name: 'end play', what: 'reading' as const }] } : {}),
    ...(r() < 0.2 ? { unknown: ['after', 'who'] } : {}),
  }),
  'order-chosen': (r) => ({
    face: pick(r, FACES),
    name: pick(r, ['the manual', 'a spiral']),
    passes: [{ share: 1, sequence: HOLES }],
  }),
  'job-done': () => ({ job: 'filter', name: 'filter fitted' }),
  'clock-started': () => ({ clock: 'c1', what: 'sealant open', minutes: 10, face: 'pan' }),
  'clock-stopped': () => ({ clock: 'c1' }),
  'bolt-placed': (r) => ({ face: pick(r, FACES), hole: pick(r, HOLES), kind: pick(r, KINDS) }),
  'hand-started': (r) => ({ face: pick(r, FACES), hole: pick(r, HOLES) }),
  'run-down': (r) => ({ face: pick(r, FACES), hole: pick(r, HOLES) }),
  snugged: (r) => ({ face: pick(r, FACES), hole: pick(r, HOLES) }),
  'pass-torqued': (r) => ({
    face: pick(r, FACES),
    hole: pick(r, HOLES),
    pass: pick(r, [1, 2]),
    final: r() < 0.5,
    ...(r() < 0.8 ? { torque: pick(r, [9.5, 10, { value: 7, unit: 'lbf·ft' as const }]) } : {}),
    tool: { name: 'torque wrench', number: 'w4' },
  }),
  'witness-marked': (r) => ({ face: pick(r, FACES), hole: pick(r, HOLES) }),
  'turns-counted': (r) => ({ face: pick(r, FACES), hole: pick(r, HOLES), turns: 8.5, seated: r() < 0.5 }),
  'resistance-felt': (r) => ({ face: pick(r, FACES), hole: pick(r, HOLES), feel: 'gritty', turns: 3 }),
  'resistance-cleared': (r) => ({ face: pick(r, FACES), hole: pick(r, HOLES), found: 'sealant in the thread' }),
  'bolt-backed-out': (r) => ({ face: pick(r, FACES), hole: pick(r, HOLES), reason: 'wrong kind' }),
  'face-opened': (r) => ({ face: pick(r, FACES), holes: HOLES.slice(0, 1 + Math.floor(r() * 3)), reason: 'leaks' }),
  'face-closed': (r) => ({ face: pick(r, FACES) }),
  'gate-overridden': (r) => ({ gate: 'hand-start', face: pick(r, FACES), reason: 'dowel holds it' }),
  'work-paused': (r) => ({ face: pick(r, FACES), step: 'pass 1' }),
  'step-signed': (r) => ({ step: 'cover closed', as: pick(r, ['builder', 'checker'] as const) }),
  'face-released': (r) => ({ face: pick(r, FACES) }),
  'unit-released': () => ({ heads: {}, record: 'c'.repeat(64), onlyPerson: true }),
  'came-back': (r) => ({ complaint: 'weeps at the pan', ...(r() < 0.5 ? { toAnswer: true } : {}) }),
  'come-back-answered': () => ({
    cameBack: '00000000-0000-4000-8000-000000000000',
    found: 'the gasket had torn',
    done: 'a new one',
    face: 'pan',
  }),
  undone: () => ({ event: '00000000-0000-4000-8000-000000000000', reason: 'a slip' }),
  'clash-settled': () => ({ at: ['face', 'pan', 'hole', '1'], field: 'grip', stands: null, reason: 'both were wrong' }),
}
