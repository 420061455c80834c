/** Paper out of the record: made on the device, also without signal. Fetched when something is printed for the first time. */
import type { Face, FaceAnswer, Unit } from '@gripbook/engine'
import {
  type Board,
  boltBoard,
  buildRecordPdf,
  FONT_FILES,
  learnerSheet,
  marksOf,
  type PaperSize,
} from '@gripbook/paper'
import { buildRecordOf, type FoldedUnit, sha256OfText, unitFileOf } from '@gripbook/record'
import { startEngine } from '../workers/engine.ts'

export type OfFace = { folded: FoldedUnit; unit: Unit; face: Face; answer: FaceAnswer | null }

export async function boardPaper({ folded, unit, face, answer }: OfFace, paper: PaperSize, made: Date): Promise<Board> {
  const marks = marksOf(folded.faces[face.id])
  const shown = { face, ...(answer === null ? {} : { answer }), ...(marks === undefined ? {} : { marks }) }
  return boltBoard(unit, [shown], { paper, made, fonts: await fonts() })
}

/** Without an answer there is nothing to ask the learner. */
export async function learnerPaper(
  { folded, unit, face, answer }: OfFace & { answer: FaceAnswer },
  paper: PaperSize,
  made: Date,
): Promise<Board> {
  const marks = marksOf(folded.faces[face.id])
  return learnerSheet(unit, face, answer, {
    paper,
    made,
    fonts: await fonts(),
    ...(marks === undefined ? {} : { marks }),
  })
}

type Around = {
  paper: PaperSize
  people: Readonly<Record<string, string>>
  /** Where the shop is reached; absent for a device on its own. */
  shop: { address?: string }
  /** A photograph by its name in entries; null where it is neither here nor to be had. */
  photographOf: (photograph: string) => Promise<Blob | null>
}

export async function recordPaper(
  folded: FoldedUnit,
  { paper, people, shop, photographOf }: Around,
): Promise<Uint8Array> {
  const answer = await answerTo(unitFileOf(folded).unit)
  const record = buildRecordOf(folded, {
    people,
    shop,
    hash: sha256OfText,
    ...(answer === null ? {} : { answer }),
  })
  const names = new Set([
    ...record.photographs.map(({ photograph }) => photograph),
    ...record.faces.flatMap((face) => face.photograph?.photograph ?? []),
  ])
  const photographs = new Map<string, Uint8Array>()
  for (const name of names) {
    const found = await photographOf(name)
    if (found !== null) photographs.set(name, await printable(found))
  }
  const made = new Date(record.last ?? 0)
  return buildRecordPdf(record, { fonts: await fonts(), paper, photographs, made })
}

async function answerTo(unit: Unit | null) {
  if (unit === null) return null
  const engine = startEngine()
  try {
    const said = await engine.ask(unit)
    return said?.ok ? said.answer : null
  } finally {
    engine.close()
  }
}

let loaded: Promise<{ regular: Uint8Array; bold: Uint8Array }> | undefined

function fonts() {
  loaded ??= Promise.all([FONT_FILES.regular, FONT_FILES.bold].map(bytesAt)).then(([regular, bold]) => ({
    regular: regular!,
    bold: bold!,
  }))
  // One that could not be fetched is asked for again.
  loaded.catch(() => {
    loaded = undefined
  })
  return loaded
}

async function bytesAt(url: URL): Promise<Uint8Array> {
  const answer = await fetch(url)
  if (!answer.ok) throw new Error(`${url.pathname} came back as ${answer.status}`)
  return new Uint8Array(await answer.arrayBuffer())
}

/** px; wider than this no printer shows more. */
const WIDEST = 2_000

/** A PDF holds JPEG and PNG only, and a camera's pixels are more than paper shows. */
async function printable(photograph: Blob): Promise<Uint8Array> {
  const picture = await createImageBitmap(photograph)
  const scale = Math.min(1, WIDEST / Math.max(picture.width, picture.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.round(picture.width * scale)
  canvas.height = Math.round(picture.height * scale)
  canvas.getContext('2d')!.drawImage(picture, 0, 0, canvas.width, canvas.height)
  picture.close()
  const jpeg = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', 0.85))
  return new Uint8Array(await (jpeg ?? photograph).arrayBuffer())
}
