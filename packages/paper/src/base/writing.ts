/** The state of a document that is being written: its page, the place on it, its pen and its structure. */
import type { Pen } from '../sheet.ts'
import type { Doc, Ink } from './ink.ts'
import { points } from './measures.ts'
import { type Pictures, penOn } from './pen.ts'
import type { Tags } from './tags.ts'

export type Format = { width: number; height: number; left: number; right: number; top: number; bottom: number }

export class Writing {
  readonly doc: Doc
  readonly tags: Tags
  readonly pictures: Pictures
  readonly pen: Pen
  readonly width: number
  readonly height: number
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  y: number
  page = 0

  constructor(doc: Doc, tags: Tags, ink: Ink, pictures: Pictures, format: Format) {
    this.doc = doc
    this.tags = tags
    this.pictures = pictures
    this.pen = penOn(doc, ink, pictures)
    this.width = format.width
    this.height = format.height
    this.left = format.left
    this.right = format.right
    this.top = format.top
    this.bottom = format.bottom
    this.y = format.top
    this.newPage()
  }

  newPage(): void {
    this.doc.addPage({ size: [points(this.width), points(this.height)], margin: 0 })
    this.page += 1
    this.y = this.top
  }

  /** Whether so many mm fit on an empty page. */
  fits(height: number): boolean {
    return height <= this.bottom - this.top
  }

  need(height: number): void {
    if (this.y + height > this.bottom && this.y > this.top) this.newPage()
  }
}
