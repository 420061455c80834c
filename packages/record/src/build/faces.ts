/** The faces of a build record: each hole as it was found and as it was built, and every pass with its wrench. */
import type { Face, FaceAnswer, HoleAnswer, PlacementAnswer, Quantity } from '@gripbook/engine'
import type { BodyOf } from '../events/catalogue.ts'
import { passesIn } from '../gates/benchFace.ts'
import type { Passed } from '../gates/stop.ts'
import type { HoleWork } from '../unit.ts'
import type { BuiltFace, BuiltHole, BuiltPass, Instrument } from './buildRecord.ts'
import { given, type Telling } from './telling.ts'

export function builtFaces(
  telling: Telling,
  { answer, passed }: { answer?: PlacementAnswer | undefined; passed: readonly Passed[] },
): BuiltFace[] {
  const { folded } = telling
  const outOfBand = new Set(passed.flatMap(({ event, stop }) => (stop.gate === 'torque out of band' ? [event] : [])))
  return Object.entries(folded.faces).map(([id, work]) => {
    const file = folded.unit.faces.find((face) => face.id === id)
    const settled = answer?.faces.find(({ face }) => face === id)
    const chosen = work.orderChosen?.value
    const photograph = work.photograph?.value
    const marks = Object.entries(work.holes).flatMap(([hole, { mark }]) =>
      mark === undefined ? [] : [{ hole, at: mark.value }],
    )
    return {
      id,
      ...given({ name: file?.name, torque: file?.torque }),
      ...(photograph === undefined
        ? {}
        : {
            photograph: {
              photograph: photograph.photograph,
              width: photograph.width,
              height: photograph.height,
              marks,
            },
          }),
      ...(chosen !== undefined
        ? { order: chosen }
        : file?.order === undefined
          ? {}
          : { order: { passes: file.order } }),
      kinds: [...(file?.kinds ?? []), ...(folded.unit.kinds ?? [])],
      holes: Object.entries(work.holes).map(([hole, at]) => builtHole(telling, { hole, at, file, settled, outOfBand })),
      ...(work.closed?.value === true ? { closed: telling.doneBy(work.closed) } : {}),
      ...(work.released === undefined ? {} : { released: telling.doneBy(work.released) }),
    }
  })
}

type InFace = {
  hole: string
  at: HoleWork
  file: Face | undefined
  settled: FaceAnswer | undefined
  outOfBand: ReadonlySet<string>
}

function builtHole(telling: Telling, { hole, at, file, settled, outOfBand }: InFace): BuiltHole {
  const own = file?.holes.find(({ id }) => id === hole)
  const { asFound: found } = own ?? {}
  const placed = at.placed
  const { 'hand-started': started, turns, 'witness mark': mark } = at.steps
  const wanted = own?.torque ?? file?.torque
  const answered = settled?.holes[hole]
  return {
    id: hole,
    thread: own?.thread ?? [],
    ...given({ found, condition: at.condition?.value, wanted }),
    ...(placed === undefined ? {} : { placed: { ...telling.doneBy(placed), kind: placed.value } }),
    ...(placed === undefined || found === undefined ? {} : { changed: placed.value !== found }),
    ...(answered === undefined ? {} : { belongs: belongsOf(answered) }),
    ...(started === undefined ? {} : { handStarted: telling.doneBy(started) }),
    ...(turns === undefined ? {} : { turns: { ...telling.doneBy(turns), ...turns.value } }),
    ...(mark === undefined ? {} : { witnessMark: telling.doneBy(mark) }),
    passes: builtPasses(telling, at, wanted, outOfBand),
  }
}

function belongsOf({ verdict, may, asFound }: HoleAnswer): NonNullable<BuiltHole['belongs']> {
  return { verdict, may, ...(asFound === undefined ? {} : { asFound: asFound.verdict }) }
}

/** The passes that still hold; those of a bolt that was backed out are gone. */
function builtPasses(
  telling: Telling,
  { steps }: HoleWork,
  wanted: Quantity | undefined,
  outOfBand: ReadonlySet<string>,
): BuiltPass[] {
  return passesIn(steps).flatMap((number): BuiltPass[] => {
    const event = telling.byId(steps[`pass ${number}`]!.event)
    if (event?.type !== 'pass-torqued') return []
    const body = event.body as BodyOf<'pass-torqued'>
    const tool = body.tool === undefined ? undefined : instrumentOf(telling, body.tool)
    const byFeel = body.tool?.byFeel === true || (body.torque === undefined && body.angle === undefined)
    const until = tool?.calibratedUntil
    return [
      {
        ...telling.done(event),
        pass: body.pass,
        final: body.final,
        ...given({ torque: body.torque, angle: body.angle, tool }),
        ...given({ wanted: body.wanted ?? (body.final && body.angle === undefined ? wanted : undefined) }),
        byFeel,
        ...(byFeel || until === undefined ? {} : { inCalibration: until >= event.at.slice(0, 10) }),
        outOfBand: outOfBand.has(event.id),
      },
    ]
  })
}

/** What an entry says of its instrument, and where it says nothing of the calibration, what the shop does. */
export function instrumentOf(
  { folded }: Telling,
  { name, number, calibratedUntil }: { name: string; number?: string; calibratedUntil?: string },
): Instrument {
  const known = number === undefined ? undefined : folded.things.instrument[number]
  const until = calibratedUntil ?? (known?.calibratedUntil?.value as string | undefined)
  return { name, ...given({ number, calibratedUntil: until }) }
}

/** Every wrench that a pass was done with, and how many bolts it finished. */
export function wrenchesOf(faces: readonly BuiltFace[]): (Instrument & { bolts: number; outOfCalibration: boolean })[] {
  const wrenches = new Map<string, Instrument & { bolts: number; outOfCalibration: boolean }>()
  for (const { tool, final, inCalibration } of faces.flatMap(({ holes }) => holes.flatMap(({ passes }) => passes))) {
    if (tool === undefined) continue
    const key = `${tool.number ?? ''} ${tool.name}`
    const known = wrenches.get(key) ?? { ...tool, bolts: 0, outOfCalibration: false }
    wrenches.set(key, {
      ...known,
      bolts: known.bolts + (final ? 1 : 0),
      outOfCalibration: known.outOfCalibration || inCalibration === false,
    })
  }
  return [...wrenches.values()]
}
