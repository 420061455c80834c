import { type FacePass, facePasses, visitsOf } from '../tightening/facePasses.ts'
import type { Face, Hole, Job, JobNeed, Unit, UnitPart } from '../unit.ts'
import { toolsForPass, toolsToRunDown } from './defaultTools.ts'
import { partJob } from './relations.ts'

/** What the unit file does not hold: plugs by their ids, as the record has them. */
export type MoreParts = { plugs?: readonly string[] }

/** Minutes for a job and for each of its bolts: common practice, no source. The user's own and the shop's record win. */
const MINUTES = {
  clean: 1,
  tray: 0.3,
  dryFit: 2,
  ready: 2,
  place: 1,
  handStart: 0.3,
  runDown: 0.3,
  pass: 0.25,
  mark: 0.1,
  close: 1,
  part: 2,
  readings: 10,
}

/** Parts that are set from outside when a face is closed; any other lies inside and is hidden by the cover. */
const OUTSIDE: readonly UnitPart['what'][] = ['bracket', 'clip', 'connector', 'wire']

/**
 * All jobs of a unit: Gripbook's own, with the user's changes. A job of the same id changes the fields that it gives, another is added after them. A part that
 * is in its place again is done.
 */
export function jobsOf(unit: Unit, more: MoreParts = {}): Job[] {
  const changes = new Map((unit.jobs ?? []).map((job) => [job.id, job]))
  const own = defaultJobs(unit, more).map((job): Job => {
    const change = changes.get(job.id)
    changes.delete(job.id)
    return { ...job, ...change }
  })
  return [...own, ...changes.values()]
}

/**
 * The order of work that a unit has of itself, from its faces, visits, parts and plugs: for each face clean and check the holes, lay out the tray, try the cover
 * dry, gasket or sealant, cover on, all bolts started by hand, run down, the passes, witness marks, close; a face inside another comes first; parts and
 * plugs at their face; the last readings at the end. Common practice, no source: the manual's order rules.
 */
export function defaultJobs(unit: Unit, { plugs = [] }: MoreParts = {}): Job[] {
  const parts = unit.parts ?? []
  const faces = unit.faces.flatMap((face) =>
    faceJobs(
      face,
      unit,
      parts.filter((part) => part.face === face.id),
    ),
  )
  const closed = unit.faces.map(({ id }) => `${id}/close`)
  const cleaned = unit.faces.map(({ id }) => `${id}/clean`)
  const loose = parts
    .filter((part) => part.face === undefined || !unit.faces.some(({ id }) => id === part.face))
    .map((part) => partIn(part, isOutside(part) ? closed : cleaned))
  const plugJobs = plugs.map(
    (plug): Job => ({ id: `plug/${plug}`, name: `Put plug ${plug} in and pull at it`, after: closed, minutes: 0.5 }),
  )
  const before = [
    ...closed,
    ...[...loose, ...plugJobs].map(({ id }) => id),
    ...outsideOf(parts).map(({ id }) => partJob(id)),
  ]
  return [
    ...faces,
    ...loose,
    ...plugJobs,
    {
      id: 'readings',
      name: 'Turn by hand, take the last readings',
      after: [...new Set(before)],
      minutes: MINUTES.readings,
    },
  ]
}

const isOutside = ({ what }: UnitPart): boolean => OUTSIDE.includes(what)
const outsideOf = (parts: readonly UnitPart[]): UnitPart[] =>
  parts.filter((part) => part.hole === undefined && isOutside(part))

function faceJobs(face: Face, unit: Unit, parts: readonly UnitPart[]): Job[] {
  const called = face.name ?? face.id
  const count = face.holes.length
  const id = (step: string) => `${face.id}/${step}`
  const job = (step: string, name: string, minutes: number, rest: Partial<Job> = {}): Job => ({
    id: id(step),
    name,
    face: face.id,
    ...rest,
    ...(face.side === undefined ? {} : { side: face.side }),
    minutes: rounded(minutes),
  })
  const inner = parts.filter((part) => part.hole === undefined && !isOutside(part))
  const gaskets = inner.filter(({ what }) => what === 'gasket')
  const isGasketUnnamed = face.gasket !== undefined && face.gasket !== 0 && gaskets.length === 0
  const wet = face.sealant
  const passes = facePasses(face.holes, face.order)
  const last = visitJobs(face, unit, parts, passes, job)
  const joinedUntil = wet?.until === 'joined' ? id('place') : id(closingPass(passes, visitsOf(face.holes)[0]))
  return [
    job('clean', `Clean and check the holes of ${called}`, MINUTES.clean * count),
    job('tray', `Lay out the bolts of ${called}, one for each hole`, MINUTES.tray * count, {
      needs: [trayNeed(face, unit)],
    }),
    job('dry fit', `Try the cover of ${called} dry on its dowels`, MINUTES.dryFit, { after: [id('clean')] }),
    ...inner.filter(({ what }) => what !== 'gasket').map((part) => partIn(part, [id('clean')], face)),
    ...(isGasketUnnamed
      ? [
          job('gasket', `Gasket of ${called} on its face`, MINUTES.ready, {
            after: [id('dry fit')],
            needs: [{ name: `gasket of ${called}`, what: 'part' as const }],
          }),
        ]
      : []),
    ...gaskets.map((part) => partIn(part, [id('dry fit')], face)),
    ...(wet === undefined
      ? []
      : [
          job('sealant', `${wet.name ?? 'Sealant'} on ${called}`, MINUTES.ready, {
            after: [id('dry fit'), id('tray')],
            needs: [{ name: wet.name ?? 'sealant', what: 'part' as const }],
            ...(wet.minutes === undefined && wet.least === undefined
              ? {}
              : {
                  window: {
                    what: wet.name ?? 'sealant',
                    ...(wet.minutes === undefined ? {} : { minutes: wet.minutes }),
                    ...(wet.least === undefined ? {} : { least: wet.least }),
                    until: wet.least === undefined ? [joinedUntil] : [...new Set([id('place'), joinedUntil])],
                  },
                }),
          }),
        ]),
    job('place', `Cover of ${called} on, home by hand`, MINUTES.place, {
      after: [
        id('dry fit'),
        id('tray'),
        ...(wet === undefined ? [] : [id('sealant')]),
        ...(isGasketUnnamed ? [id('gasket')] : []),
      ],
      ...buries([
        ...unit.faces.filter(({ inside }) => inside === face.id).map((hidden) => hidden.id),
        ...inner.map((part) => part.id),
      ]),
    }),
    ...last,
    ...outsideOf(parts).map((part) => partIn(part, [id('close')], face)),
  ]
}

/** Bolts of each visit: what waits for them, started by hand, run down, passes; then witness marks and the close of the face. */
function visitJobs(
  face: Face,
  unit: Unit,
  parts: readonly UnitPart[],
  passes: readonly FacePass[],
  job: (step: string, name: string, minutes: number, rest?: Partial<Job>) => Job,
): Job[] {
  const called = face.name ?? face.id
  const id = (step: string) => `${face.id}/${step}`
  const out: Job[] = []
  const byId = new Map(face.holes.map((hole) => [hole.id, hole]))
  const visits = visitsOf(face.holes)
  const met = new Set<Hole>()
  let before = id('place')
  for (const visit of visits) {
    const holes = face.holes.filter((hole) => (hole.visit ?? 1) === visit)
    const named = visit === visits[0] ? '' : ` ${visit}`
    const words = visit === visits[0] ? called : `${called}, visit ${visit}`
    const held = parts.filter(({ hole }) => holes.some((one) => one.id === hole))
    const set = held.map((part) => partIn(part, [before], face))
    out.push(...set)
    const locating = holes.filter(({ locates }) => locates === true).map((hole) => hole.id)
    const first = locating.length > 0 ? `, first ${locating.join(', ')}` : ''
    out.push(
      job(`hand-start${named}`, `Start all bolts of ${words} by hand${first}`, MINUTES.handStart * holes.length, {
        after: [before, ...set.map((part) => part.id)],
        ...needs(bracketNeeds(holes, held)),
      }),
      job(`run down${named}`, `Run all bolts of ${words} down`, MINUTES.runDown * holes.length, {
        after: [id(`hand-start${named}`)],
        tools: toolsToRunDown(holes),
      }),
    )
    before = id(`run down${named}`)
    const inVisit = passes.filter((pass) => pass.visit === visit)
    inVisit.forEach((pass, i) => {
      const step = passStep(i, visit, visits[0]!)
      const turned = pass.holes.map((hole) => byId.get(hole)!)
      const fresh = [...new Set(turned)].filter((hole) => !met.has(hole))
      for (const hole of fresh) met.add(hole)
      const over = pass.stated || !face.order?.length ? words : `hole ${pass.holes.join(', ')} of ${words}`
      const share = `${Number((pass.share * 100).toFixed(1))} %`
      out.push(
        job(step, `Pass ${i + 1} over ${over}, ${share}`, MINUTES.pass * turned.length, {
          after: [before],
          tools: toolsForPass(turned, pass.stated, unit.tools),
          ...needs(torqueNeeds(face, fresh)),
        }),
      )
      before = id(step)
    })
  }
  out.push(
    job('witness marks', `Witness marks on ${called}`, MINUTES.mark * face.holes.length, { after: [before] }),
    job('close', `${called} closed: nothing left over, nothing loose`, MINUTES.close, { after: [id('witness marks')] }),
  )
  return out
}

/** The last pass of the first visit that has passes: what lies between is joined then. A face without bolts is joined when its cover is on. */
function closingPass(passes: readonly FacePass[], first = 1): string {
  const visit = passes[0]?.visit
  if (visit === undefined) return 'place'
  return passStep(passes.filter((pass) => pass.visit === visit).length - 1, visit, first)
}

function passStep(index: number, visit: number, first: number): string {
  return `pass ${index + 1}${visit === first ? '' : ` of visit ${visit}`}`
}

function partIn(part: UnitPart, after: readonly string[], face?: Face): Job {
  return {
    id: partJob(part.id),
    name: `${part.what === 'other' ? 'Part' : capital(part.what)} ${part.name ?? part.id} in its place`,
    ...(part.face === undefined ? {} : { face: part.face }),
    ...(after.length === 0 ? {} : { after: [...after] }),
    minutes: MINUTES.part,
    ...(part.in === true ? { done: true } : {}),
    ...(face === undefined ? {} : sideOf(face)),
  }
}

/** Counted bolts against holes: "one for each hole" is not ready while the tray holds fewer. Whose count nobody states are as many as needed. */
function trayNeed(face: Face, unit: Unit): JobNeed {
  const kinds = [...(face.kinds ?? []), ...(unit.kinds ?? [])]
  const bolts = kinds.reduce((sum, { count = Number.POSITIVE_INFINITY }) => sum + count, 0)
  const name = `${face.holes.length} bolts for ${face.name ?? face.id}`
  if (kinds.length === 0) return { name, what: 'part' }
  return { name, what: 'part', ready: bolts >= face.holes.length }
}

/** A hole with a bracket under its head, where the bracket is not among the parts. */
function bracketNeeds(holes: readonly Hole[], held: readonly UnitPart[]): JobNeed[] {
  return holes
    .filter(({ id, bracket }) => bracket !== undefined && bracket !== 0 && !held.some(({ hole }) => hole === id))
    .map(({ id }) => ({ name: `bracket of hole ${id}`, what: 'part' }))
}

function torqueNeeds(face: Face, holes: readonly Hole[]): JobNeed[] {
  const without = holes.filter(({ torque }) => torque === undefined && face.torque === undefined).map(({ id }) => id)
  return without.length === 0 ? [] : [{ name: `torque from the manual for hole ${without.join(', ')}` }]
}

const needs = (list: JobNeed[]): Partial<Job> => (list.length === 0 ? {} : { needs: list })
const buries = (list: string[]): Partial<Job> => (list.length === 0 ? {} : { buries: list })
const sideOf = ({ side }: Face): Partial<Job> => (side === undefined ? {} : { side })
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
const rounded = (minutes: number): number => Number(minutes.toFixed(2))
