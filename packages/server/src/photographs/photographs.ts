/** Photographs of the record: taken in piece by piece, checked, cleaned, kept. What `makePhotographs` builds on the database and a place for bytes. */

/**
 * A photograph that is kept. Entries call it by `photograph`, the SHA-256 of the file as the device sent it. What is kept is that picture turned upright,
 * without place and other hidden data, encoded anew: `sha256` and `bytes` are those of the kept file, always JPEG.
 */
export type KeptPhotograph = {
  photograph: string
  sha256: string
  bytes: number
  width: number
  height: number
  /** When it was kept, ISO 8601 in UTC. */
  at: string
}

/** Longest side in pixels, `full` as it was taken. */
export const SIZES = ['full', '1280', '320'] as const
export type Size = (typeof SIZES)[number]

/** A piece of a photograph as a device sends it: `bytes` from `offset` of `total` on; `complete` with the last one. */
export type Part = {
  device: string
  photograph: string
  offset: number
  total: number
  bytes: Buffer
  complete: boolean
}

/** How much of a photograph has come, or that it is kept: then none of it waits, and `received` is 0. */
export type Arrival = { received: number; kept: KeptPhotograph | null }

export type Photographs = {
  find(photograph: string): Promise<KeptPhotograph | null>
  /** The kept file or a smaller picture of it (never a larger one); null when it is not kept. Throws `Damaged` rather than give bytes that were not kept. */
  read(photograph: string, size: Size): Promise<Buffer | null>
  /** How far a device's upload has come, or that it is kept. */
  received(device: string, photograph: string): Promise<Arrival>
  /**
   * Takes a piece; answers when it is on the disk. The same piece may come again. The last one has the photograph checked, cleaned and kept; `added`:
   * it was not kept before. Throws `Refused`: other-offset, too-large, wrong-request, not-that-photograph, bad-photograph.
   */
  receive(part: Part): Promise<Arrival & { added: boolean }>
  /**
   * Takes in a file that was kept elsewhere (an archive or a backup), byte for byte, after proving that it is what is said of it and a clean JPEG. One
   * whose bytes were damaged here is put right. Throws `Refused`: bad-photograph.
   */
  takeIn(kept: KeptPhotograph, bytes: Buffer): Promise<'added' | 'known'>
  /** All that are kept, sorted by `photograph`, page after page. */
  all(): AsyncIterable<KeptPhotograph>
}

/** Thrown where the bytes of a kept photograph are not those that were kept, or are gone: damage of the disk or the store, or a hand in the folder. */
export class Damaged extends Error {
  readonly photograph: string
  constructor(photograph: string, name: string, where: string, found: 'gone' | 'changed') {
    super(
      `The photograph ${photograph} is ${found === 'gone' ? 'gone from' : 'damaged in'} ${where} (${name}). Put it back from a backup or an archive.`,
    )
    this.name = 'Damaged'
    this.photograph = photograph
  }
}
