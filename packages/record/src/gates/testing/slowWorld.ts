/** What a list of entries says, found by going through all of it for every question. Takes the clashes alone from the fold, which has a slow way of its own. */
import { canonical } from '../../canonical.ts'
import { knew } from '../../clash.ts'
import type { Event } from '../../events/event.ts'
import type { Json } from '../../events/json.ts'
import { fold } from '../../fold.ts'
import { UNIT } from '../../testing/bench.ts'

// biome-ignore lint/suspicious/noExplicitAny: bodies are asked for whatever they hold
export type Body = any
type Field = { clash: boolean; value: Body }
export type World = ReturnType<typeof worldOf>

const STEPS: Record<string, number> = { 'hand-started': -2, 'run-down': -1, snugged: 0 }
const BY_HAND =
  /^(bolt-placed|hand-started|turns-counted|run-down|snugged|pass-torqued|witness-marked|bolt-backed-out|face-opened|face-closed|part-went-in|part-replaced|plug-placed|job-done)$/

export function worldOf(known: readonly Event[]) {
  /** Of all entries that say something of the field (undefined: nothing; null: unknown again) those that no other of them knew. */
  const field = (said: (type: string, body: Body) => Json | undefined): Field => {
    const all: { event: Event; value: Json }[] = []
    for (const event of known) {
      const value = said(event.type, event.body)
      if (value !== undefined) all.push({ event, value })
    }
    if (all.length === 0) return { clash: false, value: undefined }
    const left = all.filter(({ event }) => !all.some((other) => knew(other.event, event)))
    const values = new Set(left.map(({ value }) => canonical(value)))
    const clash = values.size > 1
    return { clash, value: clash ? undefined : (left[0]?.value ?? undefined) }
  }
  const named = (pick: (type: string, body: Body) => string | undefined): string[] => [
    ...new Set(known.flatMap(({ type, body }) => pick(type, body) ?? [])),
  ]
  const happened =
    (...types: string[]) =>
    (id: string) =>
    (name: string) =>
      named((type, body) => (types.includes(type) && body[name] === id ? type : undefined)).length > 0

  const faces = () =>
    named((_, body) => (body.face !== undefined && typeof body.face === 'string' ? body.face : undefined))
  const atHole = (type: string, body: Body, face: string, hole: string) =>
    body.face === face &&
    (body.hole === hole || (type === 'face-opened' && body.holes.includes(hole))) &&
    !/^(gate-overridden|part-came-out|figure-taken|work-paused)$/.test(type)
  const holes = once((face: string): string[] => {
    const spokenOf = new Set(
      known.flatMap(({ type, body }): string[] => {
        const { hole } = body as Body
        if (hole !== undefined) return atHole(type, body, face, hole) ? [hole] : []
        return type === 'face-opened' && body.face === face ? (body as Body).holes : []
      }),
    )
    return [...spokenOf].filter((hole) => {
      const there = field((type, body) => (atHole(type, body, face, hole) ? type !== 'hole-struck-out' : undefined))
      return there.clash || there.value === true
    })
  })
  /** A hole that was struck out is none: nothing is known of it. */
  const marked = (face: string, hole: string, name: string) =>
    holes(face).includes(hole)
      ? field((type, body) =>
          type === 'hole-marked' && body.face === face && body.hole === hole ? body[name] : undefined,
        ).value
      : undefined
  const backsOut = (type: string, body: Body, face: string, hole: string) =>
    (type === 'bolt-backed-out' && body.face === face && body.hole === hole) ||
    (type === 'face-opened' && body.face === face && body.holes.includes(hole))
  const reached = (face: string, hole: string, says: (type: string, body: Body) => Json | undefined): boolean => {
    const { clash, value } = field((type, body) => {
      if (backsOut(type, body, face, hole)) return null
      return body.face === face && body.hole === hole ? says(type, body) : undefined
    })
    return !clash && value !== undefined
  }
  /** Streams have three passes at most. −9 not started, −2 started, −1 run down, 0 snug, then the pass; Infinity after the final one. */
  const level = once((face: string, hole: string): number => {
    if (!holes(face).includes(hole)) return -9
    const torqued = (body: Body) => [body.torque ?? null, body.angle ?? null]
    if (reached(face, hole, (type, body) => (type === 'pass-torqued' && body.final ? torqued(body) : undefined)))
      return Number.POSITIVE_INFINITY
    for (let pass = 3; pass > 0; pass--)
      if (
        reached(face, hole, (type, body) => (type === 'pass-torqued' && body.pass === pass ? torqued(body) : undefined))
      )
        return pass
    if (reached(face, hole, (type) => (type === 'snugged' ? true : undefined))) return STEPS.snugged!
    const { clash, value } = field((type, body) => {
      if (backsOut(type, body, face, hole)) return null
      return type === 'turns-counted' && body.face === face && body.hole === hole
        ? [body.turns, body.seated]
        : undefined
    })
    const seated = !clash && value?.[1] === true
    if (seated || reached(face, hole, (type) => (type === 'run-down' ? true : undefined))) return STEPS['run-down']!
    return reached(face, hole, (type) => (type === 'hand-started' ? true : undefined)) ? STEPS['hand-started']! : -9
  })
  const resistance = (face: string, hole: string): boolean => {
    const { clash, value } = field((type, body) => {
      if (body.face !== face || body.hole !== hole) return undefined
      return type === 'resistance-felt' ? body.feel : type === 'resistance-cleared' ? null : undefined
    })
    return clash || value !== undefined
  }
  const isClosed = (face: string): boolean =>
    field((type, body) => {
      if (body.face !== face) return undefined
      return type === 'face-closed' ? true : type === 'face-opened' ? false : undefined
    }).value === true
  const isPlaced = (face: string, hole: string): boolean =>
    field((type, body) => (type === 'bolt-placed' && body.face === face && body.hole === hole ? body.kind : undefined))
      .value !== undefined
  const atOneHole = (face: string, hole: string): string[] => [
    ...(isPlaced(face, hole) ? [] : ['hole-not-placed']),
    ...(level(face, hole) === Number.POSITIVE_INFINITY ? [] : ['hole-not-final']),
    ...(resistance(face, hole) ? ['resistance-stands'] : []),
  ]

  const PART = /^part-(came-out|went-in|replaced|written-off)$/
  const THING: Record<string, RegExp> = { part: PART, plug: /^plug-/, limit: /^limit-/, job: /^job-/ }
  const things = (what: string) =>
    named((type, body) => (THING[what]!.test(type) ? (body[what === 'limit' ? 'reading' : what] as string) : undefined))
  const isOut = (part: string): boolean => {
    const fate = field((type, body) =>
      PART.test(type) && body.part === part ? (type === 'part-came-out' ? 'out' : type) : undefined,
    )
    return fate.value === undefined || fate.value === 'out'
  }
  const part = (id: string): { face?: string; hole?: string; what?: string } => ({
    what: field((type, body) => (type === 'part-came-out' && body.part === id ? body.what : undefined)).value,
    face: field((type, body) => (type === 'part-came-out' && body.part === id ? body.face : undefined)).value,
    hole: field((type, body) => (type === 'part-came-out' && body.part === id ? body.hole : undefined)).value,
  })
  /** Nothing that it did not know of came off again: of its face, or of any where it is of none. */
  const isSinceOpening = (entry: Event, face: string | undefined): boolean =>
    known
      .filter(({ type, body }) => type === 'face-opened' && (face === undefined || (body as Body).face === face))
      .filter((opened) =>
        known.some((back) => back.type === 'came-back' && (back.body as Body).toAnswer === true && !knew(back, opened)),
      )
      .every((opened) => knew(entry, opened))
  const figure = (reading: string): string[] => {
    const limit = field((type, body) =>
      type === 'limit-stated' && body.reading === reading ? [body.least ?? null, body.most ?? null] : undefined,
    )
    const waived = field((type, body) =>
      type === 'reading-waived' && body.reading === reading ? body.reason : undefined,
    )
    if (waived.value !== undefined || limit.value === undefined) return []
    const read = (when: string) =>
      field((type, body) =>
        type === 'figure-taken' && body.reading === reading && body.when === when ? body.value : undefined,
      ).value
    const takenSince = (when: string) => {
      const holds = read(when)
      return known.some(
        (entry) =>
          entry.type === 'figure-taken' &&
          (entry.body as Body).reading === reading &&
          (entry.body as Body).when === when &&
          (entry.body as Body).value === holds &&
          isSinceOpening(entry, (entry.body as Body).face),
      )
    }
    const isOld = read('after') !== undefined && !takenSince('after')
    if (isOld && !takenSince('during')) return ['figure-before-opening']
    const value = isOld ? read('during') : (read('after') ?? read('during'))
    if (value === undefined) return ['figure-not-taken']
    const [least, most] = limit.value
    return (least !== null && value < least) || (most !== null && value > most) ? ['figure-outside'] : []
  }
  const figuresAt = (face: string) =>
    named((type, body) => (type === 'figure-taken' && body.face === face ? body.reading : undefined)).filter(
      (reading) => things('limit').includes(reading),
    )
  /** Gripbook’s own jobs, of which streams change one, are not asked for. */
  const openJob = (job: string): string[] => {
    if (job === 'pan/place') return []
    const done = known.filter(({ type, body }) => type === 'job-done' && (body as Body).job === job)
    if (done.length === 0) return ['job-not-done']
    const face = field((type, body) => (type === 'job-planned' && body.job === job ? body.face : undefined)).value
    return done.some((entry) => isSinceOpening(entry, face)) ? [] : ['job-before-opening']
  }
  const planned = (job: string, name: string): string[] =>
    field((type, body) => (type === 'job-planned' && body.job === job ? body[name] : undefined)).value ?? []
  const insideOf = (face: string) =>
    faces().filter(
      (inner) =>
        field((type, body) => (type === 'face-described' && body.face === inner ? body.inside : undefined)).value ===
        face,
    )
  const hidden = (face: string): string[] => insideOf(face).flatMap((inner) => [inner, ...hidden(inner)])
  /** What is open, by a name of its own, so that two ways to it count once. */
  const open = (face: string): [string, string][] => [
    ...holes(face).flatMap((hole) =>
      atOneHole(face, hole).map((code): [string, string] => [`${code} ${face} ${hole}`, code]),
    ),
    ...(isClosed(face) ? [] : [[`closed ${face}`, 'face-not-closed'] as [string, string]]),
  ]
  const behind = (face: string): Map<string, string> => {
    const found = new Map<string, string>()
    const at = [face, ...hidden(face)]
    for (const here of at) {
      if (here !== face) for (const [what, code] of open(here)) found.set(what, code)
      for (const id of things('part')) {
        const { face: its, hole, what } = part(id)
        const isHidden = here !== face || (hole === undefined && what !== 'bracket')
        if (isOut(id) && its === here && isHidden) found.set(`part ${id}`, 'part-out')
      }
      for (const reading of figuresAt(here)) for (const code of figure(reading)) found.set(`figure ${reading}`, code)
    }
    return found
  }
  const buried = (job: string): Map<string, string> => {
    const names = planned(job, 'buries')
    const found = new Map<string, string>()
    for (const name of names) {
      if (things('job').includes(name)) for (const code of openJob(name)) found.set(`job ${name}`, code)
      if (things('part').includes(name) && isOut(name)) found.set(`part ${name}`, 'part-out')
      if (faces().includes(name)) for (const [what, code] of [...open(name), ...behind(name)]) found.set(what, code)
    }
    return found
  }
  const needed = (job: string): [string, string][] =>
    (planned(job, 'needs') as Body[]).flatMap((need): [string, string][] => {
      if (need.what === 'signature')
        return happened('step-signed')(need.name)('step') ? [] : [[`signed ${need.name}`, 'not-signed']]
      return figure(need.name).map((code) => [`figure ${need.name}`, code])
    })
  const under = (job: string): string[] => {
    if (planned(job, 'buries').length === 0) return []
    const before = planned(job, 'after').filter((other) => things('job').includes(other))
    return [
      ...new Map([
        ...before.flatMap((other) => openJob(other).map((code) => [`job ${other}`, code] as const)),
        ...buried(job),
        ...needed(job),
      ]).values(),
    ]
  }
  const toClose = (face: string): string[] => [
    ...new Map([
      ...open(face).filter(([, code]) => code === 'hole-not-final' || code === 'resistance-stands'),
      ...behind(face),
      ...buried(`${face}/place`),
      ...needed(`${face}/place`),
    ]).values(),
  ]
  const clocks = (face?: string) =>
    named((type, body) => (type === 'clock-started' ? body.clock : undefined)).filter((clock) => {
      const of = (name: string) =>
        field((type, body) => (type === 'clock-started' && body.clock === clock ? body[name] : undefined)).value
      const running = field((type, body) =>
        /^clock-/.test(type) && body.clock === clock ? type === 'clock-started' : undefined,
      )
      return running.value === true && (face === undefined || of('face') === face)
    })
  const clashes = (face?: string) =>
    fold(UNIT, known).clashes.filter(({ place }) => face === undefined || (place[0] === 'face' && place[1] === face))
  const check = (face?: string): string[] => {
    const here = known.filter(({ body }) => face === undefined || body.face === face)
    const hands = here.filter(({ type }) => BY_HAND.test(type))
    const built = new Set([
      ...hands.map(({ who }) => who),
      ...here.filter(({ type, body }) => type === 'step-signed' && body.as === 'builder').map(({ who }) => who),
    ])
    const signed = known.filter(
      ({ type, body, who }) =>
        type === 'step-signed' &&
        body.as === 'checker' &&
        (body.face === undefined || body.face === face) &&
        !built.has(who),
    )
    if (signed.length === 0) return ['not-checked']
    const backs = here.filter(
      ({ type, body }) => (type === 'came-back' && body.toAnswer) || type === 'come-back-answered',
    )
    return signed.some((mark) => [...hands, ...backs].every((work) => knew(mark, work))) ? [] : ['signed-before']
  }
  const comeBacks = (): string[] =>
    known
      .filter(({ type, body }) => type === 'came-back' && (body as Body).toAnswer)
      .filter(({ id }) => !happened('come-back-answered')(id)('cameBack'))
      .map(({ id }) => id)
  const is = (type: string, name: string, id: string): boolean =>
    field((each, body) => (each === type && body[name] === id ? body.socket : undefined)).value !== undefined

  return {
    field,
    faces,
    holes,
    level,
    resistance,
    visit: (face: string, hole: string): number => marked(face, hole, 'visit') ?? 1,
    locates: (face: string, hole: string): boolean => marked(face, hole, 'locates') === true,
    torque: (face: string, hole: string): number | undefined =>
      holes(face).includes(hole)
        ? (marked(face, hole, 'torque') ??
          field((type, body) => (type === 'face-described' && body.face === face ? body.torque : undefined)).value)
        : undefined,
    atFace: (face: string) => open(face).map(([, code]) => code),
    things,
    isOut,
    part,
    figure,
    figuresAt,
    openJob,
    toClose,
    under,
    clocks,
    clashes,
    check,
    comeBacks,
    is,
  }
}

/** Asked once for the same names: the list does not change. */
function once<A extends string[], T>(ask: (...names: A) => T): (...names: A) => T {
  const answers = new Map<string, T>()
  return (...names) => {
    const key = names.join('\n')
    const known = answers.get(key) ?? ask(...names)
    answers.set(key, known)
    return known
  }
}
