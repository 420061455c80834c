/** The first page: what the unit is, whether it is released, what was wrong, what was changed, and whether it is proven. */
import type { BuildRecord } from '@gripbook/record'
import type { Cell, Sheet } from '../sheet.ts'
import {
  boltsWords,
  boltWords,
  byWords,
  faceNamed,
  faceWords,
  limitWords,
  partWords,
  takenWords,
  timeWords,
  whoWords,
} from './figureWords.ts'
import { words } from './words.ts'

const QR = 34
const BANNER = { size: 22, large: 34, small: 9.5, padding: 3 }

/** What the QR code says: where the shop’s server answers for these entries, else their hash. */
export function checkAddress({ shop, unit, hash, state }: BuildRecord): string {
  return shop.address === undefined || state === 'state only'
    ? hash
    : `${shop.address}/api/units/${unit.id}/record/${hash}`
}

export function writeFront(sheet: Sheet, record: BuildRecord): void {
  const top = sheet.y
  const address = checkAddress(record)
  sheet.qr(address, { alt: words.qrAlt(address), size: QR, at: [sheet.right - QR, top] })
  writeTitle(sheet, record)
  sheet.y = Math.max(sheet.y, top + QR)
  writeHash(sheet, record, address)
  writeBanner(sheet, record)
  sheet.heading(2, words.wrong)
  writeList(sheet, wrongIn(record), words.nothingWrong)
  sheet.heading(2, words.changed)
  writeList(sheet, changedIn(record), nothingChanged(record))
  if (record.state !== 'state only') {
    sheet.heading(2, words.proven)
    writeProof(sheet, record)
  }
}

/** Beside the QR code: the lines are wrapped to the room that it leaves. */
function writeTitle(sheet: Sheet, { unit, takenIn }: BuildRecord): void {
  const room = sheet.right - sheet.left - QR - 6
  sheet.heading(3, words.head)
  for (const line of sheet.pen.wrap(unit.name ?? words.unnamed, room, { size: 18, bold: true }, 2))
    sheet.heading(1, line)
  const about = [
    ...(unit.model === undefined ? [] : [unit.model]),
    ...(unit.job === undefined ? [] : [`${words.unit.job} ${unit.job}`]),
    ...(takenIn === undefined ? [] : [`${words.unit.takenIn} ${byWords(takenIn)}`]),
    ...(unit.history === undefined ? [] : [`${words.unit.history}: ${unit.history}`]),
  ]
  if (about.length > 0) sheet.paragraph(sheet.pen.wrap(about.join('. '), room, { size: 10 }).join('\n'))
}

function writeHash(sheet: Sheet, { state, entries, hash }: BuildRecord, address: string): void {
  const small = { size: 8, fill: '#333333' }
  const what = state === 'state only' ? words.fileHash : words.entries(entries)
  sheet.paragraph(`${what} ${hash}`, small)
  if (address !== hash) sheet.paragraph(`${words.scan} ${address}`, small)
}

/** Released: black on white in a frame. Anything else: white on black, so that nobody takes it for a proof. */
function writeBanner(sheet: Sheet, { state, release }: BuildRecord): void {
  const { small, padding } = BANNER
  const isReleased = state === 'released'
  const size = isReleased ? BANNER.size : BANNER.large
  const width = sheet.right - sheet.left - 2 * padding
  const means = words.stateMeans[state](
    whoWords(release?.who ?? ''),
    release === undefined ? '' : timeWords(release.at),
  )
  const lines = sheet.pen.wrap(words.state[state], width, { size, bold: true })
  const below = sheet.pen.wrap(means, width, { size: small })
  const high = 0.45 * size
  const line = 0.45 * small
  const height = 2 * padding + lines.length * high + below.length * line
  const [fill, ink] = isReleased ? ['#ffffff', '#000000'] : ['#000000', '#ffffff']
  sheet.gap(1)
  const top = sheet.y
  sheet.aside((pen) =>
    pen.rect(sheet.left, top, sheet.right - sheet.left, height, {
      fill,
      stroke: '#000000',
      width: isReleased ? 0.8 : 0.4,
    }),
  )
  const x = sheet.left + padding
  let y = top + padding
  for (const text of lines) {
    sheet.textAt(text, x, y + 0.8 * high, { size, bold: true, fill: ink })
    y += high
  }
  for (const text of below) {
    sheet.textAt(text, x, y + 0.8 * line, { size: small, fill: ink })
    y += line
  }
  sheet.y = top + height
}

function writeList(sheet: Sheet, items: readonly string[], nothing: string): void {
  if (items.length === 0) sheet.paragraph(nothing)
  else sheet.list(items, { size: 9.5 })
}

function wrongIn(record: BuildRecord): string[] {
  const { complaint, cameBack, openedBefore, faces, figures, parts, bolts, resistances } = record
  return [
    ...(complaint === undefined ? [] : [words.complaint(complaint)]),
    ...cameBack.flatMap(({ complaint: back, at, answers }) => [
      words.cameBack(back, timeWords(at)),
      ...answers.map(({ found, done, face }) =>
        words.answered(found, done, face === undefined ? undefined : faceNamed(faces, face)),
      ),
    ]),
    ...(openedBefore.length === 0 ? [] : [words.opened(openedBefore.length)]),
    ...faces.flatMap((face) => {
      const holes = face.holes.filter(({ belongs }) => belongs?.asFound === 'must change').map(({ id }) => id)
      return holes.length === 0 ? [] : [words.cannotStay(faceWords(face), holes)]
    }),
    ...figures.flatMap(({ name, before, limit, wasOutside }) =>
      wasOutside ? [words.figureOutside(name, takenWords(before!), limitWords(limit!))] : [],
    ),
    ...parts.flatMap((part) =>
      part.condition === undefined || part.fate === 'in' ? [] : [words.partBad(partWords(part), part.condition)],
    ),
    ...faces.flatMap((face) =>
      face.holes.flatMap(({ id, condition }) =>
        condition === undefined ? [] : [words.boltBad(faceWords(face), id, condition)],
      ),
    ),
    ...bolts.filter(({ what }) => what === 'written off').map((bolt) => boltsWords(bolt, faces)),
    ...resistances.map(({ face, hole, feel }) => words.resistance(faceNamed(faces, face), hole, feel)),
  ]
}

function nothingChanged({ state, faces }: BuildRecord): string {
  if (state === 'state only') return words.fileSaysNothing
  const holes = faces.flatMap((face) => face.holes)
  return holes.length > 0 && holes.every(({ changed }) => changed === false)
    ? words.nothingChanged
    : words.notYetChanged
}

function changedIn(record: BuildRecord): string[] {
  const { faces, parts, fits, bolts } = record
  return [
    ...faces.flatMap((face) => {
      const moves = face.holes.flatMap(({ id, found, placed, changed }) =>
        changed === true && found !== undefined && placed !== undefined
          ? [words.move(id, boltWords(face, found), boltWords(face, placed.kind))]
          : [],
      )
      return moves.length === 0 ? [] : [words.otherBolt(faceWords(face), moves)]
    }),
    ...parts.flatMap((part) => {
      if (part.fate === 'replaced') return [words.replacedBy(partWords(part), part.by ?? '')]
      return part.fate === 'written off' ? [words.writtenOff(partWords(part), part.reason ?? '')] : []
    }),
    ...fits.map(({ place, part }) => words.fit(place, part)),
    ...bolts.filter(({ what }) => what === 'added').map((bolt) => boltsWords(bolt, faces)),
  ]
}

function clockWords(clocks: BuildRecord['clocks']): string {
  const say = words.proof
  const over = clocks.flatMap(({ what, over }) => (over === undefined ? [] : [what]))
  const running = clocks.flatMap(({ what, ran }) => (ran === undefined ? [what] : []))
  if (over.length + running.length === 0) return say.kept
  return [...(over.length > 0 ? [say.late(over)] : []), ...(running.length > 0 ? [say.running(running)] : [])].join(
    '; ',
  )
}

function writeProof(sheet: Sheet, record: BuildRecord): void {
  const { proof, open, release, parts, clocks, state } = record
  const say = words.proof
  const row = (question: string, answer: string, isProven: boolean): Cell[] => [
    question,
    { text: answer, bold: !isProven },
  ]
  const finals = record.faces.flatMap(({ holes }) =>
    holes.flatMap(({ passes }) => passes.filter(({ final }) => final).slice(-1)),
  )
  const noWant = finals.filter(({ byFeel, wanted }) => !byFeel && wanted === undefined).length
  const band = say.notInBand(proof.outOfBand, proof.byFeel, noWant)
  const calibration = say.notCalibrated(proof.outOfCalibration, proof.calibrationUnknown)
  const done = parts.filter(({ fate }) => fate !== 'out').length
  const isKept = clocks.every(({ ran, over }) => ran !== undefined && over === undefined)
  const checkedBy = proof.checkedBy.map(whoWords).join(', ')
  sheet.table({
    summary: say.summary,
    columns: [
      { title: say.question, share: 2 },
      { title: say.answer, share: 3 },
    ],
    rows: [
      row(
        say.release,
        release === undefined ? say.noRelease : release.holds ? `${byWords(release)}; ${say.fits}` : say.fitsNot,
        state === 'released',
      ),
      row(say.bolts, say.ofBolts(proof.final, proof.bolts), proof.final === proof.bolts),
      row(say.band, band === '' ? say.ofBolts(proof.final, proof.final) : band, band === ''),
      row(
        say.calibration,
        calibration === '' ? say.ofBolts(proof.final, proof.final) : calibration,
        calibration === '',
      ),
      row(
        say.figures,
        proof.figures === 0 ? say.noFigures : say.ofFigures(proof.inside, proof.figures, proof.waived),
        proof.inside === proof.figures,
      ),
      row(say.parts, parts.length === 0 ? say.noParts : say.ofParts(done, parts.length), done === parts.length),
      ...(clocks.length === 0 ? [] : [row(say.clocks, clockWords(clocks), isKept)]),
      row(
        say.stops,
        proof.overridden + proof.silent === 0 ? say.noStops : say.passed(proof.overridden, proof.silent),
        proof.overridden + proof.silent === 0,
      ),
      row(
        say.checked,
        checkedBy !== '' ? checkedBy : release?.onlyPerson === true ? say.onlyPerson : say.notChecked,
        checkedBy !== '',
      ),
      row(say.open, open.length === 0 ? say.nothingOpen : String(open.length), open.length === 0),
    ],
    size: 8.5,
  })
}
