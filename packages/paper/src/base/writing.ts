/** The state of a document that is being written: its page, the place on it, its pen and its structure. */
import type { Pen } from '../sheet.ts'
import type { Doc, Ink } from './ink.ts'
import { points } from './measures.ts'
import { type Pictures, penOn } from './pen.ts'
import type { Tags } from './tags.ts'

/** A page's size and the room for content on it, mm. */
export type Format = { width: number; height: number; left: number; right: number; top: number; bottom: number }

export class Writing {
  readonly doc: Doc
  readonly tags: Tags
  readonly pictures: Pictures
  readonly pen: Pen
  /** Of each page that was begun. */
  readonly formats: Format[] = []
  private readonly formatOf: (landscape: boolean) => Format
  private landscape: boolean
  private at = 0

  constructor(
    doc: Doc,
    tags: Tags,
    ink: Ink,
    pictures: Pictures,
    formatOf: (landscape: boolean) => Format,
    landscape: boolean,
  ) {
    this.doc = doc
    this.tags = tags
    this.pictures = pictures
    this.pen = penOn(doc, ink, pictures)
    this.formatOf = formatOf
    this.landscape = landscape
  }

  /** Of the page that is written on. */
  get format(): Format {
    this.begin()
    return this.formats.at(-1)!
  }

  /** Where the next thing goes, mm from the upper edge. */
  get y(): number {
    this.begin()
    return this.at
  }

  set y(y: number) {
    this.at = y
  }

  /** The first page begins when something is put on it: until then it may still be laid on its side. */
  begin(): void {
    if (this.formats.length === 0) this.newPage()
  }

  newPage(landscape = this.landscape): void {
    this.landscape = landscape
    const format = this.formatOf(landscape)
    this.formats.push(format)
    this.doc.addPage({ size: [points(format.width), points(format.height)], margin: 0 })
    this.at = format.top
  }

  /** Whether so many mm fit on an empty page. */
  fits(height: number): boolean {
    return height <= this.format.bottom - this.format.top
  }

  need(height: number): void {
    if (this.y + height > this.format.bottom && this.y > this.format.top) this.newPage()
  }
}
