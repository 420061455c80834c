/** A photograph from a camera or a file, made fit for the record: what the shop takes, with the size at which it stands upright. */

export type TakenPhotograph = {
  bytes: Blob
  /** Pixels of the upright picture: marks are given in them. */
  width: number
  height: number
}

export class NoPhotograph extends Error {}

const KEPT_AS_THEY_ARE = ['image/jpeg', 'image/png', 'image/webp']
/** The shop refuses more pixels than this. */
const MOST_PIXELS = 60_000_000
const QUALITY = 0.92

/**
 * Width and height are those of the picture turned by its orientation tag, as every browser shows it. A kind of file that the shop does not
 * take (HEIC where the browser reads it, AVIF, BMP) becomes a JPEG here, and so does one with more pixels than it takes. Errors: `NoPhotograph`
 * when the browser cannot read the file.
 */
export async function takePhotograph(file: Blob): Promise<TakenPhotograph> {
  const url = URL.createObjectURL(file)
  try {
    const image = new Image()
    image.src = url
    await loaded(image)
    const { naturalWidth: width, naturalHeight: height } = image
    if (width < 1 || height < 1) throw new NoPhotograph()
    if (KEPT_AS_THEY_ARE.includes(file.type) && width * height <= MOST_PIXELS) return { bytes: file, width, height }
    return await drawnAnew(image, Math.min(1, Math.sqrt(MOST_PIXELS / (width * height))))
  } finally {
    URL.revokeObjectURL(url)
  }
}

/** `decode` would unpack every pixel of a large photograph only to learn its size; loading reads its head. */
function loaded(image: HTMLImageElement): Promise<void> {
  return new Promise((resolve, reject) => {
    image.onload = () => resolve()
    image.onerror = () => reject(new NoPhotograph())
  })
}

async function drawnAnew(image: HTMLImageElement, scale: number): Promise<TakenPhotograph> {
  const width = Math.floor(image.naturalWidth * scale)
  const height = Math.floor(image.naturalHeight * scale)
  const canvas = document.createElement('canvas')
  canvas.width = width
  canvas.height = height
  const context = canvas.getContext('2d')
  if (context === null) throw new NoPhotograph()
  context.drawImage(image, 0, 0, width, height)
  const bytes = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY))
  // A canvas keeps its pixels until it is collected; an empty one lets them go now.
  canvas.width = 0
  if (bytes === null) throw new NoPhotograph()
  return { bytes, width, height }
}
