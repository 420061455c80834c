import {
  type Face,
  type FaceAnswer,
  type Hole,
  type Interval,
  intervalOf,
  type PlacementAnswer,
  readThread,
  type Thread,
  type Unit,
} from '@gripbook/engine'
import { type DrawnBolt, sectionDrawing } from '@gripbook/print'
import { sizeName, trayOf } from '../text/boltName.ts'
import { systemWords } from '../unitFrom.ts'
import type { World } from '../world.ts'

/**
 * Draws each hole of the printed faces, with the bolt that belongs in it, into a directory: `pump-cover-1.svg`. Returns what went wrong with
 * the directory, in words, or undefined.
 */
export async function drawFaces(
  unit: Unit,
  answer: PlacementAnswer,
  directory: string,
  world: World,
): Promise<string | undefined> {
  const taken = new Set<string>()
  const drawings = answer.faces.flatMap((faceAnswer) => {
    const face = unit.faces.find(({ id }) => id === faceAnswer.face)
    return (face?.holes ?? []).map((hole) => ({
      name: fileName(`${faceAnswer.face}-${hole.id}`, taken),
      svg: drawing(unit, face!, hole, faceAnswer),
    }))
  })
  try {
    await world.makeDirectory(directory)
    for (const { name, svg } of drawings) await world.writeFile(`${directory.replace(/\/+$/, '') || '/'}/${name}`, svg)
    return undefined
  } catch (fault) {
    const words = systemWords(fault)
    if (words === undefined) throw fault
    return `${directory}: the drawings cannot be written there: ${words}`
  }
}

/** A name for a drawing that no system stumbles over: no separators, no leading dot, none twice. */
function fileName(wanted: string, taken: Set<string>): string {
  const plain = wanted
    .replace(/[^\p{L}\p{N}._-]+/gu, '_')
    .replace(/^\.+/, '_')
    .slice(0, 100)
  let name = `${plain}.svg`
  for (let i = 2; taken.has(name.toLowerCase()); i++) name = `${plain}_${i}.svg`
  taken.add(name.toLowerCase())
  return name
}

function drawing(unit: Unit, face: Face, hole: Hole, answer: FaceAnswer): string {
  const holeAnswer = answer.holes[hole.id]
  const shown = holeAnswer?.best ?? (hole.asFound === 'none' ? undefined : hole.asFound)
  const role =
    holeAnswer?.best != null ? (holeAnswer.verdict === 'settled' ? 'belongs here' : 'most likely') : 'as found'
  const bolt = shown === undefined ? undefined : drawnBolt(unit, face, hole, shown, role, answer)
  const least = hole.minimumEngagement ?? face.minimumEngagement
  const minimumEngagement: Interval | undefined = least === undefined ? undefined : intervalOf(least)
  return sectionDrawing({
    hole,
    thread: bolt?.thread ?? threadOf(hole.thread),
    face: {
      ...(face.gasket === undefined ? {} : { gasket: face.gasket }),
      ...(minimumEngagement === undefined ? {} : { minimumEngagement }),
    },
    ...(bolt ? { bolt } : {}),
    title: `${face.name ?? face.id}, hole ${hole.id}${bolt ? `: ${sizeName(bolt.kind)}` : ''}`,
    look: { theme: 'print' },
  })
}

function drawnBolt(
  unit: Unit,
  face: Face,
  hole: Hole,
  id: string,
  role: string,
  answer: FaceAnswer,
): DrawnBolt | undefined {
  const kind = trayOf(unit, face).get(id)
  const pair = answer.pairs.find((one) => one.hole === hole.id && one.kind === id)
  if (!kind || !pair) return undefined
  const { verdict, line, why, margin } = pair
  return { kind, thread: threadOf(kind.thread, hole.thread), role, verdict, line, why, margin }
}

/** The first of the threads, or the first that is also among the others. */
function threadOf(threads: string | string[], others: string | string[] = threads): Thread {
  const all = read(threads)
  const shared = read(others).map(({ name }) => name)
  return all.find(({ name }) => shared.includes(name)) ?? all[0]!
}

function read(threads: string | string[]): Thread[] {
  return (typeof threads === 'string' ? [threads] : threads).flatMap((text) => {
    const thread = readThread(text)
    return thread.ok ? [thread.value] : []
  })
}
