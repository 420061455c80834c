import type { PlacementAnswer, Unit } from '@gripbook/engine'
import { sectionDrawing, sectionOf } from '@gripbook/print'
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
      svg: sectionDrawing(sectionOf({ unit, face: face!, hole, answer: faceAnswer, look: { theme: 'print' } })),
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
