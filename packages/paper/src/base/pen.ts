import type { Look, Pen, Place } from '../sheet.ts'
import type { Doc, Ink } from './ink.ts'
import { points } from './measures.ts'
import { wrapped } from './wrap.ts'

/** An opened picture; upright when `orientation` (EXIF) says how. */
export type Opened = { width: number; height: number; orientation?: number }

/** Opens each picture once, so that one drawn twice is in the file once. */
export class Pictures {
  private readonly doc: Doc
  private readonly opened = new Map<Uint8Array, Opened>()

  constructor(doc: Doc) {
    this.doc = doc
  }

  /** Throws when the bytes are no JPEG and no PNG, or a damaged one. */
  open(bytes: Uint8Array): Opened {
    const known = this.opened.get(bytes)
    if (known) return known
    const opened = (this.doc as unknown as { openImage(bytes: Uint8Array): Opened }).openImage(bytes)
    this.opened.set(bytes, opened)
    return opened
  }

  /** Width and height as it is shown, pixels. */
  sizeOf(bytes: Uint8Array): { width: number; height: number } {
    const { width, height, orientation = 1 } = this.open(bytes)
    return orientation > 4 ? { width: height, height: width } : { width, height }
  }
}

export function penOn(doc: Doc, ink: Ink, pictures: Pictures): Pen {
  return {
    line: (places, look) => drawn(doc, look, () => path(doc, places)),
    area: (places, look) => drawn(doc, look, () => path(doc, places).closePath()),
    rect: (x, y, width, height, look) =>
      drawn(doc, look, () => doc.rect(points(x), points(y), points(width), points(height))),
    circle: (x, y, radius, look) => drawn(doc, look, () => doc.circle(points(x), points(y), points(radius))),
    text: (text, x, y, type) => ink.draw(text, x, y, type),
    image: (bytes, x, y, width, height) => {
      const opened = pictures.open(bytes) as unknown as PDFKit.Mixins.ImageSrc
      doc.image(opened, points(x), points(y), { width: points(width), height: points(height) })
    },
    clipped: (x, y, width, height, draw) => {
      doc.save().rect(points(x), points(y), points(width), points(height)).clip()
      draw()
      doc.restore()
    },
    turned: (degrees, x, y, draw) => {
      doc.save().translate(points(x), points(y)).rotate(degrees)
      draw()
      doc.restore()
    },
    widthOf: (text, type) => ink.widthOf(text, type),
    wrap: (text, width, type, most) => wrapped(text, width, (line) => ink.widthOf(line, type), most),
  }
}

function path(doc: Doc, places: readonly Place[]): Doc {
  for (const [i, [x, y]] of places.entries()) {
    if (i === 0) doc.moveTo(points(x), points(y))
    else doc.lineTo(points(x), points(y))
  }
  return doc
}

function drawn(doc: Doc, { stroke, width = 0.25, dash, fill }: Look, outline: () => void): void {
  if (stroke === undefined && fill === undefined) return
  doc.save()
  doc.lineWidth(points(width)).lineJoin('round').lineCap('butt')
  if (dash) doc.dash(points(dash[0]), { space: points(dash[1]) })
  outline()
  if (stroke !== undefined && fill !== undefined) doc.fillAndStroke(fill, stroke)
  else if (fill !== undefined) doc.fill(fill)
  else doc.stroke(stroke!)
  doc.restore()
}
