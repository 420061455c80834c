/** What a build record ends with: photographs that no face carries, what is unsettled, cautions, signatures, and how to check it. */
import { type BuildRecord, sayPlace } from '@gripbook/record'
import type { Cell, Sheet } from '../sheet.ts'
import { atWords, faceNamed, spaced, timeWords, whoWords } from './figureWords.ts'
import type { Picture } from './picture.ts'
import { words } from './words.ts'

const SIZE = 8.5
const FURTHER = 62
const LINE_FOR_A_NAME = { height: 16, width: 70 }

export function writePhotographs(
  sheet: Sheet,
  { photographs, faces, parts }: BuildRecord,
  pictureNamed: (photograph: string) => Picture,
): void {
  const shown = photographs.flatMap((one) => {
    const bytes = pictureNamed(one.photograph)
    return typeof bytes === 'string' ? [] : [{ ...one, bytes }]
  })
  if (photographs.length === 0) return
  sheet.heading(2, words.photographs)
  for (const { bytes, caption, part, ...where } of shown) {
    const piece = part === undefined ? [] : [parts.find(({ id }) => id === part)?.name ?? part]
    const text = [
      ...(caption === undefined ? [] : [caption]),
      ...[...piece, ...atWords(where, faces)].map(words.photographOf),
    ].join(', ')
    sheet.picture(bytes, { alt: words.photographAlt(text), most: FURTHER })
    sheet.paragraph(text, { size: 8 })
  }
  const lacking = photographs.length - shown.length
  if (lacking > 0) sheet.paragraph(words.absent(lacking))
}

export function writeUnsettled(sheet: Sheet, { clashes, notUnderstood }: BuildRecord): void {
  if (clashes.length > 0) {
    sheet.heading(2, words.clashes)
    sheet.list(clashes.map(({ place, field }) => words.clash(sayPlace(place), spaced(field))))
  }
  if (notUnderstood.length === 0) return
  sheet.heading(2, words.notUnderstood)
  sheet.list(notUnderstood)
}

export function writeCautions(sheet: Sheet, { cautions }: BuildRecord): void {
  sheet.heading(2, words.cautions)
  sheet.paragraph(words.cautionsFirst, { bold: true, size: 9 })
  sheet.list(
    cautions.map((caution) => words.caution[caution]),
    { size: 9 },
  )
}

export function writeSignatures(sheet: Sheet, { signatures, release, faces }: BuildRecord): void {
  const say = words.signatures
  sheet.heading(2, say.heading)
  const rows = [
    ...signatures.map(({ as, who, at, step, face, before }): Cell[] => [
      say.roles[as],
      { text: whoWords(who), bold: true },
      [step, ...(face === undefined ? [] : [faceNamed(faces, face)]), ...(before ? [say.before] : [])].join(', '),
      timeWords(at),
    ]),
    ...(release === undefined
      ? []
      : [
          [
            say.release,
            { text: whoWords(release.who), bold: true },
            say.theUnit,
            timeWords(release.at),
          ] satisfies Cell[],
        ]),
  ]
  if (rows.length === 0) sheet.paragraph(say.none, { bold: true })
  else
    sheet.table({
      summary: say.summary,
      columns: [
        { title: say.as, share: 1.2 },
        { title: say.who, share: 3 },
        { title: say.what, share: 4 },
        { title: say.at, share: 1.8 },
      ],
      rows,
      size: 9,
    })
  if (release?.onlyPerson === true) sheet.paragraph(say.onlyPerson, { bold: true })
  writeLines(sheet)
}

/** Room for ink, for whoever wants it beside the signatures of the devices. */
function writeLines(sheet: Sheet): void {
  const { height, width } = LINE_FOR_A_NAME
  sheet.need(height)
  const y = sheet.y + height - 5
  const second = sheet.left + width + 20
  sheet.aside((pen) => {
    for (const x of [sheet.left, second])
      pen.line(
        [
          [x, y],
          [x + width, y],
        ],
        { stroke: '#000000', width: 0.25 },
      )
  })
  const { byHand, roles } = words.signatures
  sheet.textAt(byHand(roles.builder), sheet.left, y + 3.5, { size: 7.5 })
  sheet.textAt(byHand(roles.checker), second, y + 3.5, { size: 7.5 })
  sheet.y += height
}

export function writeHowToCheck(sheet: Sheet, { unit, release, shop, state }: BuildRecord): void {
  const say = words.check
  sheet.heading(2, say.heading)
  if (state === 'state only') {
    sheet.list([...say.ofFile, words.rules], { size: SIZE })
    return
  }
  sheet.list(
    [
      ...say.lines(shop.key === undefined ? say.notSigned : say.signedWith(shop.key)),
      ...(release === undefined ? [] : [say.releaseHash(release.record)]),
      say.unit(unit.id),
      words.rules,
    ],
    { size: SIZE },
  )
}
