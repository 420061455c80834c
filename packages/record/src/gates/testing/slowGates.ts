/**
 * The gates once more, from their rules (docs/gates.md) and without any of their code: for each entry the list of all entries that its device knew
 * is gone through again for every single question. Slow, and easy to hold against the page of rules.
 */
import { canonical } from '../../canonical.ts'
import { knew } from '../../clash.ts'
import type { Event } from '../../events/event.ts'
import { inOrder } from '../../inOrder.ts'
import { type Body, type World, worldOf } from './slowWorld.ts'

/** `gate / code`, at the entry’s own place. */
export type SlowStop = { gate: string; code: string }
export type SlowPassed = SlowStop & { event: string; override: string | null }

/** Entries that count, in order. */
export function thatStand(events: readonly Event[]): Event[] {
  const entries = [...events].sort(inOrder)
  const dead = new Set<string>()
  for (const entry of [...entries].reverse()) {
    if (entry.type !== 'undone' || dead.has(entry.id)) continue
    const target = entries.find(({ id }) => id === (entry.body as Body).event)
    if (target !== undefined && knew(entry, target)) dead.add(target.id)
  }
  return entries.filter(({ id }) => !dead.has(id))
}

export function slowPassed(events: readonly Event[]): SlowPassed[] {
  const standing = thatStand(events)
  const passed: SlowPassed[] = []
  const spent = new Set<string>()
  for (const entry of standing) {
    const known = standing.filter((other) => knew(entry, other))
    const silent = passed.filter(({ event, override }) => override === null && known.some(({ id }) => id === event))
    const stops = slowStops(known, entry, silent, standing)
    if (entry.type === 'unit-released')
      for (const code of gaps(events.filter((other) => knew(entry, other)))) stops.push({ gate: 'release', code })
    for (const gate of new Set(stops.map((stop) => stop.gate))) {
      const body = entry.body as Body
      const place =
        gate === 'release' || gate === 'closing step' ? { face: body.face } : { face: body.face, hole: body.hole }
      const mine = known.filter(
        ({ id, type, body: said }) =>
          type === 'gate-overridden' &&
          !spent.has(id) &&
          (said as Body).gate === gate &&
          (said as Body).face === place.face &&
          (said as Body).hole === place.hole,
      )
      for (const { id } of mine) spent.add(id)
      const override = mine.at(-1)?.id ?? null
      for (const stop of stops) if (stop.gate === gate) passed.push({ ...stop, event: entry.id, override })
    }
  }
  return passed
}

/** What is open of the whole unit, as codes, each as often as it is open; `passed` is what was found of its stops. */
export function slowOpen(events: readonly Event[], passed: readonly SlowPassed[]): string[] {
  const standing = thatStand(events)
  const silent = passed.filter(({ override }) => override === null)
  return [...openOfUnit(worldOf(standing), silent, false), ...gaps(events)]
}

/** One for each run of numbers that some entry had seen and that are not here. */
function gaps(events: readonly Event[]): string[] {
  const here = new Set(events.map(({ device, seq }) => `${device} ${seq}`))
  const runs: string[] = []
  for (const device of new Set(events.flatMap((event) => [event.device, ...Object.keys(event.seen)]))) {
    const last = Math.max(...events.map((event) => (event.device === device ? event.seq : (event.seen[device] ?? 0))))
    for (let seq = 1; seq <= last; seq++)
      if (!here.has(`${device} ${seq}`) && (seq === 1 || here.has(`${device} ${seq - 1}`))) runs.push('entries-missing')
  }
  return runs
}

function slowStops(known: Event[], entry: Event, silent: SlowPassed[], standing: Event[]): SlowStop[] {
  const world = worldOf(known)
  const body = entry.body as Body
  const { face, hole } = body
  const release = (codes: string[]) => codes.map((code) => ({ gate: 'release', code }))
  switch (entry.type) {
    case 'face-closed':
      return world.toClose(face).map((code) => ({ gate: 'closing step', code }))
    case 'job-done':
      return world.under(body.job).map((code) => ({ gate: 'closing step', code }))
    case 'face-released': {
      const atFace = silent.filter(({ event }) => (standing.find(({ id }) => id === event)!.body as Body).face === face)
      return release(openOfFace(world, face, atFace, body.onlyPerson === true))
    }
    case 'unit-released': {
      const heads: Record<string, number> = { ...entry.seen }
      if (entry.seq > 1) heads[entry.device] = entry.seq - 1
      const right = canonical(heads) === canonical(body.heads)
      return release([...openOfUnit(world, silent, body.onlyPerson === true), ...(right ? [] : ['heads'])])
    }
    case 'turns-counted':
      return body.seated ? tightening(world, entry.type, face, hole, body) : []
    case 'hand-started':
    case 'run-down':
    case 'snugged':
      return tightening(world, entry.type, face, hole, body)
    case 'pass-torqued':
      return [...tightening(world, entry.type, face, hole, body), ...wrench(world, entry, body)]
    default:
      return []
  }
}

function tightening(world: World, type: string, face: string, hole: string, body: Body): SlowStop[] {
  const stops: SlowStop[] = []
  const holes = world.holes(face)
  if (holes.some((id) => world.resistance(face, id))) stops.push({ gate: 'resistance', code: 'resistance' })
  const stated: { share: number; sequence: string[] }[] | undefined =
    world.field((type, b) => (type === 'order-chosen' && b.face === face ? b.passes : undefined)).value ??
    world.field((type, b) => (type === 'face-described' && b.face === face ? b.order : undefined)).value
  const order = stated === undefined ? undefined : [...stated]
  // bolts that it leaves out: three rounds of their own, visit after visit
  for (const visit of [1, 2, 3]) {
    const left = holes.filter((id) => world.visit(face, id) === visit && !stated?.some((p) => p.sequence.includes(id)))
    if (left.length > 0) order?.push(...[0.3, 0.6, 1].map((share) => ({ share, sequence: left })))
  }
  const visitOfPass = (i: number) =>
    Math.max(...order![i]!.sequence.filter((id) => holes.includes(id)).map((id) => world.visit(face, id)), 1)
  let pass: number = body.pass ?? 0
  let visit = world.visit(face, hole)
  if (type === 'pass-torqued' && order !== undefined) {
    const mine = [...order.keys()].filter((i) => order[i]!.sequence.includes(hole) && holes.includes(hole))
    const last = mine.at(-1)
    if (body.final && last !== undefined) pass = Math.max(pass, last + 1)
    if (mine.includes(pass - 1)) visit = visitOfPass(pass - 1)
  }
  // visits before
  const unfinished = holes.some((id) => {
    const own = world.visit(face, id)
    if (own >= visit || world.level(face, id) === Number.POSITIVE_INFINITY) return false
    const passes = [...(order ?? []).keys()].filter((i) => order![i]!.sequence.includes(id))
    if (!passes.some((i) => visitOfPass(i) > own)) return true
    return world.level(face, id) === -9 || passes.some((i) => visitOfPass(i) === own && world.level(face, id) < i + 1)
  })
  if (unfinished) stops.push({ gate: 'pass before', code: 'visit-not-complete' })

  const together = holes.filter((id) => world.visit(face, id) === visit)
  if (type === 'hand-started') {
    const locating = together.filter((id) => id !== hole && world.locates(face, id) && world.level(face, id) === -9)
    if (locating.length > 0 && !world.locates(face, hole)) stops.push({ gate: 'hand-start', code: 'locating-first' })
    return stops
  }
  if ([...together, hole].some((id) => world.level(face, id) === -9))
    stops.push({ gate: 'hand-start', code: 'not-hand-started' })
  const snugFace =
    world.field((type, b) => (type === 'face-described' && b.face === face ? b.snug : undefined)).value === true
  if (snugFace && (type === 'snugged' || type === 'pass-torqued') && together.some((id) => world.level(face, id) < -1))
    stops.push({ gate: 'pass before', code: 'not-run-down' })
  if (type !== 'pass-torqued') return stops
  if (snugFace && together.some((id) => world.level(face, id) < 0))
    stops.push({ gate: 'pass before', code: 'not-snug' })
  const behind =
    order === undefined
      ? together.some((id) => Math.max(0, world.level(face, id)) < pass - 1)
      : [...order.keys()].some(
          (i) =>
            i + 1 < pass &&
            visitOfPass(i) === visit &&
            order[i]!.sequence.some((id) => holes.includes(id) && Math.max(0, world.level(face, id)) < i + 1),
        )
  if (behind) stops.push({ gate: 'pass before', code: 'pass-not-complete' })
  return stops
}

/** Torques of the streams are plain N·m. */
function wrench(world: World, entry: Event, { face, hole, torque, wanted, final, tool }: Body): SlowStop[] {
  const stops: SlowStop[] = []
  const checked = world.field((type, b) =>
    type === 'instrument-checked' && b.instrument === tool?.number ? b.calibratedUntil : undefined,
  )
  const until = tool?.calibratedUntil ?? (checked.clash ? undefined : checked.value)
  if (tool !== undefined && !tool.byFeel && until !== undefined && until < entry.at.slice(0, 10))
    stops.push({ gate: 'calibration', code: 'out-of-calibration' })
  const asked = wanted ?? world.torque(face, hole)
  if (final && torque !== undefined && asked !== undefined && Math.abs(torque - asked) > asked * 0.06 + 1e-9)
    stops.push({ gate: 'torque out of band', code: 'out-of-band' })
  return stops
}

function openOfUnit(world: World, silent: SlowPassed[], onlyPerson: boolean): string[] {
  return [
    ...world.faces().flatMap((face) => world.atFace(face)),
    ...world
      .things('part')
      .filter((part) => world.isOut(part))
      .map(() => 'part-out'),
    ...world
      .things('plug')
      .filter((plug) => !world.is('plug-placed', 'plug', plug))
      .map(() => 'plug-not-placed'),
    ...world.things('limit').flatMap((reading) => world.figure(reading)),
    ...world.things('job').flatMap((job) => world.openJob(job)),
    ...world.clocks().map(() => 'clock-runs'),
    ...world.comeBacks().map(() => 'come-back-not-answered'),
    ...world.clashes().map(() => 'clash'),
    ...oncePerGate(silent).map(() => 'stop-passed'),
    ...(onlyPerson ? [] : world.check()),
  ]
}

function openOfFace(world: World, face: string, silent: SlowPassed[], onlyPerson: boolean): string[] {
  return [
    ...world.atFace(face),
    ...world
      .things('part')
      .filter((part) => world.isOut(part) && world.part(part).face === face)
      .map(() => 'part-out'),
    ...world.figuresAt(face).flatMap((reading) => world.figure(reading)),
    ...world.clocks(face).map(() => 'clock-runs'),
    ...world.clashes(face).map(() => 'clash'),
    ...oncePerGate(silent).map(() => 'stop-passed'),
    ...(onlyPerson ? [] : world.check(face)),
  ]
}

function oncePerGate(silent: SlowPassed[]): string[] {
  return [...new Set(silent.map(({ event, gate }) => `${event} ${gate}`))]
}
