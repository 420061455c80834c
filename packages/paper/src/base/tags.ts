/** The structure that a screen reader follows: elements in the order in which they are written, with the drawing that belongs to each. */
import type { Doc } from './ink.ts'

export type Element = PDFKit.PDFStructureElement

export type Tag =
  | 'H1'
  | 'H2'
  | 'H3'
  | 'P'
  | 'Figure'
  | 'Table'
  | 'TR'
  | 'TH'
  | 'TD'
  | 'L'
  | 'LI'
  | 'Lbl'
  | 'LBody'
  | 'Caption'

export type TagOptions = { alt?: string; bbox?: [number, number, number, number]; scope?: 'Column' | 'Row' }

export class Tags {
  private readonly doc: Doc
  private readonly root: Element
  /** What is being marked now. */
  private within: { element: Element; tag: Tag } | undefined

  constructor(doc: Doc) {
    this.doc = doc
    this.root = doc.struct('Document')
    doc.addStructure(this.root)
  }

  /** A new element after all that `parent` has. It is filled by `mark` or by elements inside it. */
  open(tag: Tag, options: TagOptions = {}, parent: Element = this.root): Element {
    const element = this.doc.struct(tag, options as PDFKit.Mixins.StructureElementOptions)
    parent.add(element)
    return element
  }

  /** What is drawn inside belongs to the element; an element that goes over pages is marked on each. */
  mark(element: Element, tag: Tag, draw: () => void): void {
    this.within = { element, tag }
    element.add(this.doc.markStructureContent(tag))
    draw()
    this.doc.endMarkedContent()
    this.within = undefined
  }

  /**
   * What the parts draw stands for the text `actual`, whatever glyphs it shows. It becomes an element of its own in the middle of the one that is
   * being marked, because readers lose their way in one sequence inside another. In an aside it is only drawn. A part that is drawn in glyphs
   * of other letters says which it stands for; `font` is the operator that sets the type.
   */
  standingFor(actual: string, font: string, parts: readonly { actual?: string; draw: () => void }[]): void {
    const { doc, within } = this
    if (!within) {
      for (const { draw } of parts) draw()
      return
    }
    doc.endMarkedContent()
    const span = doc.struct('Span', { actual } as PDFKit.Mixins.StructureElementOptions)
    within.element.add(span)
    for (const part of parts) {
      // A reader places the letters by what holds where the sequence ends. The library turns its page upside down and back for each text; here it is turned
      // back before and upside down again inside, and the type is set outside, so that the end sees what the glyphs see.
      const flip = `1 0 0 -1 0 ${doc.page.height} cm`
      doc.addContent('q').addContent(flip).addContent(font)
      const stands = part.actual === undefined ? {} : { actual: part.actual }
      span.add(doc.markStructureContent('Span', stands as PDFKit.Mixins.MarkingOptions))
      doc.addContent('q').addContent(flip)
      part.draw()
      doc.addContent('Q')
      doc.endMarkedContent()
      doc.addContent('Q')
    }
    within.element.add(doc.markStructureContent(within.tag))
  }

  /** What is drawn inside is for the eye alone. */
  aside(draw: () => void, type: 'Layout' | 'Pagination' = 'Layout'): void {
    this.doc.markContent('Artifact', { type })
    draw()
    this.doc.endMarkedContent()
  }

  end(): void {
    this.root.end()
  }
}
