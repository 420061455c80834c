const JPEG = [0xff, 0xd8, 0xff]
const PNG = [0x89, 0x50, 0x4e, 0x47]

/** What a picture is by its first bytes; the PDF holds JPEG and PNG as they are. */
export function pictureKind(bytes: Uint8Array): 'jpeg' | 'png' | 'other' {
  const begins = (with_: readonly number[]) => with_.every((byte, i) => bytes[i] === byte)
  return begins(JPEG) ? 'jpeg' : begins(PNG) ? 'png' : 'other'
}
