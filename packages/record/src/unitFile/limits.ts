/**
 * How much a unit file may hold. Generous for a bench (a gearbox has a few hundred holes), small enough that nonsense is refused at once
 * instead of being worked on.
 */
export const LIMITS = {
  /** Bytes of the file on disk; also the characters of its text. */
  bytes: 8_000_000,
  /** Braces and brackets inside each other. A unit needs 8. */
  depth: 32,
  /** Values of any sort in one file. */
  values: 500_000,
  faces: 200,
  holes: 2_000,
  kinds: 2_000,
  lines: 10_000,
  points: 10_000,
  /** Openings, regions, hollows or lines of one cover. */
  outlines: 200,
  words: 50,
  jobs: 1_000,
  tools: 200,
  minutes: 1e9,
  /** Characters of an id, and of any other short text. */
  idText: 100,
  shortText: 300,
  threadText: 40,
  noteText: 10_000,
  /** mm; no hole lies further off and no bolt is longer. */
  length: 100_000,
  torque: 1_000_000,
  count: 100_000,
  stiffness: 1e12,
  /** Rz in µm: coarser is no machined surface. */
  roughness: 1_000,
  interfaces: 20,
} as const
