const JPEG = [0xff, 0xd8, 0xff]
const PNG = [0x89, 0x50, 0x4e, 0x47]

/** A photograph's bytes; `absent` where nobody had it, `unreadable` where the PDF cannot hold it. */
export type Picture = Uint8Array | 'absent' | 'unreadable'

/** What can be shown of a photograph, by its first bytes: the PDF holds JPEG and PNG as they are. */
export function pictureOf(bytes: Uint8Array | undefined): Picture {
  if (bytes === undefined) return 'absent'
  return [JPEG, PNG].some((start) => start.every((byte, i) => bytes[i] === byte)) ? bytes : 'unreadable'
}
