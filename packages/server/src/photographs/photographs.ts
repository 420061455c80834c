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
