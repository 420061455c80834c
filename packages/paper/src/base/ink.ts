/** Type and fonts on the PDF library: measuring, and drawing text whatever letters are in it. */
import type { Fonts, Type } from '../sheet.ts'
import { MM_PER_POINT, points } from './measures.ts'
import { cleaned, graphemes, type Run, runsOf } from './runs.ts'
import type { Tags } from './tags.ts'

export type Doc = PDFKit.PDFDocument

/** The part of an opened font that the library's types keep to themselves. */
type Opened = { _font: { id: string; font: { hasGlyphForCodePoint(codePoint: number): boolean } } }

/** Letters that no font holds are drawn as boxes, so wide and high in type heights. */
const BOX = { advance: 0.68, width: 0.54, height: 0.7 }

type DrawnType = { size: number; bold: boolean; fill: string }

export class Ink {
  private readonly doc: Doc
  private readonly tags: Tags
  private readonly names: { regular: string[]; bold: string[] }
  private readonly holds: ((codePoint: number) => boolean)[]
  private readonly widths = new Map<string, number>()
  /** True once a text had letters that none of the fonts holds. */
  lacked = false

  constructor(doc: Doc, tags: Tags, { regular, bold, further = [] }: Fonts) {
    this.doc = doc
    this.tags = tags
    const more = further.map((_, i) => `further ${i + 1}`)
    const files: [string, Uint8Array][] = [
      ['regular', regular],
      ['bold', bold],
      ...further.map((file, i): [string, Uint8Array] => [more[i]!, file]),
    ]
    for (const [name, file] of files) doc.registerFont(name, file as Buffer)
    this.names = { regular: ['regular', ...more], bold: ['bold', ...more] }
    this.holds = this.names.regular.map((name) => {
      const { font } = (doc.font(name) as unknown as Opened)._font
      return (codePoint) => font.hasGlyphForCodePoint(codePoint)
    })
  }

  /** mm of one line. */
  widthOf(text: string, { size = 10, bold = false }: Type = {}): number {
    const key = `${size} ${bold} ${text}`
    const known = this.widths.get(key)
    if (known !== undefined) return known
    const width = this.runs(text).reduce((sum, run) => sum + this.widthOfRun(run, size, bold), 0)
    this.widths.set(key, width)
    return width
  }

  /** One line of text, `x` and its base line `y` in mm. */
  draw(text: string, x: number, y: number, type: Type = {}): void {
    const { size = 10, bold = false, fill = '#000000', anchor = 'start' } = type
    const back = anchor === 'start' ? 0 : anchor === 'middle' ? 0.5 : 1
    let at = x - back * this.widthOf(text, type)
    for (const run of this.runs(text)) {
      this.drawRun(run, at, y, { size, bold, fill })
      at += this.widthOfRun(run, size, bold)
    }
  }

  private runs(text: string): Run[] {
    return runsOf(cleaned(text), this.holds)
  }

  private widthOfRun({ text, font, turned }: Run, size: number, bold: boolean): number {
    if (font < 0) return graphemes(text).length * BOX.advance * size * MM_PER_POINT
    this.take(font, size, bold)
    return this.doc.widthOfString(text, shaping(turned)) * MM_PER_POINT
  }

  private drawRun({ text, font, turned }: Run, x: number, y: number, type: DrawnType): void {
    if (font < 0) {
      this.drawBoxes(text, turned, x, y, type)
      return
    }
    this.take(font, type.size, type.bold)
    // What is written from right to left is drawn in the order of the eye; copied and read it is in the order of the tongue.
    if (turned)
      this.tags.standingFor(text, this.operator(type.size), [{ draw: () => this.write(text, x, y, type.fill, true) }])
    else this.write(text, x, y, type.fill, false)
  }

  /** Boxes for the eye, the true letters for whoever copies or listens. */
  private drawBoxes(text: string, turned: boolean, x: number, y: number, type: DrawnType): void {
    this.lacked = true
    const { size, bold, fill } = type
    const height = size * MM_PER_POINT
    this.take(0, size, bold)
    const letters = graphemes(text)
    const stretch = (100 * BOX.advance * size) / this.doc.widthOfString('\u00a0')
    const parts = letters.map((actual, i) => {
      const place = turned ? letters.length - 1 - i : i
      const left = x + (place * BOX.advance + (BOX.advance - BOX.width) / 2) * height
      const draw = () => {
        this.doc
          .lineWidth(points(0.05 * height))
          .rect(points(left), points(y - BOX.height * height), points(BOX.width * height), points(BOX.height * height))
          .stroke(fill)
        // Readers tie the letter to the place of a glyph, so there has to be one; as wide as the box, or they see a gap between two words.
        this.write('\u00a0', x + place * BOX.advance * height, y, fill, false, stretch)
      }
      return { actual, draw }
    })
    this.tags.standingFor(text, this.operator(size), parts)
  }

  /** What sets the type that was taken last, as a page's content has it. */
  private operator(size: number): string {
    return `/${(this.doc as unknown as Opened)._font.id} ${size} Tf`
  }

  private take(font: number, size: number, bold: boolean): void {
    this.doc.font(this.names[bold ? 'bold' : 'regular'][font]!).fontSize(size)
  }

  private write(text: string, x: number, y: number, fill: string, turned: boolean, horizontalScaling = 100): void {
    const options = { lineBreak: false, baseline: 'alphabetic', horizontalScaling, ...shaping(turned) } as const
    this.doc.fillColor(fill).text(text, points(x), points(y), options)
  }
}

/** The library sets word after word; words that run from right to left must be shaped as one, which it does once features are named. */
function shaping(turned: boolean): { features?: PDFKit.Mixins.OpenTypeFeatures[] } {
  return turned ? { features: ['kern'] } : {}
}
