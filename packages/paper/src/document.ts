import { sheetOn } from './base/flow.ts'
import { type Doc, Ink } from './base/ink.ts'
import { lineHeight, paperSize } from './base/measures.ts'
import { Pictures } from './base/pen.ts'
import { cleaned } from './base/runs.ts'
import { Tags } from './base/tags.ts'
import { type Format, Writing } from './base/writing.ts'
import type { DocumentOptions, Sheet } from './sheet.ts'
import { words } from './words.ts'

const MARGIN = 15
const SMALL = { size: 7.5, fill: '#333333' } as const

/**
 * A PDF that `draw` writes: tagged as PDF/UA-1 wants it (language, title, structure, alternative texts, fonts inside), its text selectable,
 * its lengths true when it is printed at actual size. The same options and drawing give the same bytes.
 *
 * Text in a script that none of the fonts holds is drawn as boxes, one for each letter; copied or read out it is the true text, and the foot of the
 * document says so. Pictures are JPEG or PNG; others throw.
 */
export async function makeDocument(
  options: DocumentOptions,
  draw: (sheet: Sheet) => void | Promise<void>,
): Promise<Uint8Array> {
  // Large, and wanted only once something is printed: a page loads it then.
  const { default: PDFDocument } = await import('pdfkit')
  const { title, language = 'en', author, made, fonts, paper, landscape = false, margin = MARGIN } = options
  const doc: Doc = new PDFDocument({
    // The types know only the archive standards.
    subset: 'PDF/UA' as unknown as 'PDF/A-1',
    pdfVersion: '1.7',
    tagged: true,
    lang: language,
    displayTitle: true,
    autoFirstPage: false,
    // Else it opens a font of its own, which a browser has no file of.
    font: '',
    bufferPages: true,
    info: {
      Title: forMetadata(title) as string,
      ...(author === undefined ? {} : { Author: forMetadata(author) as string }),
      CreationDate: made,
      ModDate: made,
      Producer: 'Gripbook',
      Creator: 'Gripbook',
    },
  })
  const bytes = bytesOf(doc)
  const tags = new Tags(doc)
  const ink = new Ink(doc, tags, fonts)
  const formatOf = (onItsSide: boolean): Format => {
    const { width, height } = paperSize(paper, onItsSide)
    const line = lineHeight(SMALL.size)
    const top = margin + (options.header ? 2 * line : 0)
    return { width, height, left: margin, right: width - margin, top, bottom: height - margin - 2 * line }
  }
  const writing = new Writing(doc, tags, ink, new Pictures(doc), formatOf, landscape)
  await draw(sheetOn(writing))
  writing.begin()
  writeEdges(writing, options, ink)
  tags.end()
  doc.end()
  return bytes
}

/** Head and foot of every page, when their number is known. */
function writeEdges(writing: Writing, { header, footer, margin = MARGIN }: DocumentOptions, ink: Ink): void {
  const { doc, pen, tags, formats } = writing
  const side = (format: Format, texts: { left?: string; right?: string } | undefined, y: number, share: number) => {
    const { left, right } = format
    const fitted = (text: string, part: number) => pen.wrap(text, (right - left) * part, SMALL, 1)[0]!
    if (texts?.left !== undefined) pen.text(fitted(texts.left, share), left, y, SMALL)
    if (texts?.right !== undefined) pen.text(fitted(texts.right, 1 - share), right, y, { ...SMALL, anchor: 'end' })
  }
  for (const [i, format] of formats.entries()) {
    doc.switchToPage(i)
    tags.aside(() => {
      const y = format.height - margin
      if (header) side(format, header, margin + 2, 0.65)
      side(format, footer, y, 0.42)
      pen.text(words.page(i + 1, formats.length), format.width / 2, y, { ...SMALL, anchor: 'middle' })
    }, 'Pagination')
  }
  const last = formats.at(-1)!
  if (ink.lacked) {
    const y = last.height - margin - lineHeight(SMALL.size)
    tags.mark(tags.open('P'), 'P', () => pen.text(words.lettersLacked, last.left, y, SMALL))
  }
}

/** The library writes titles into the file's XML as they are: there the marks of XML have to be escaped, in the other place not. */
function forMetadata(text: string): unknown {
  const plain = cleaned(text)
  return Object.assign(new String(plain), {
    toString: () => plain.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;'),
  })
}

function bytesOf(doc: Doc): Promise<Uint8Array> {
  return new Promise((done, failed) => {
    const parts: Uint8Array[] = []
    doc.on('data', (part: Uint8Array) => parts.push(part))
    doc.on('error', failed)
    doc.on('end', () => {
      const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0))
      let at = 0
      for (const part of parts) {
        bytes.set(part, at)
        at += part.length
      }
      done(bytes)
    })
  })
}
