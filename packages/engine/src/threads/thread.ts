/**
 * A screw thread, read once from its designation. `diameter` and `pitch` in mm, also for unified threads; two threads are the same
 * when their `name` (the canonical designation: "M8", "M8×1", "5/16-18 UNC") is the same.
 */
export type Thread = { profile: 'metric' | 'unified'; diameter: number; pitch: number; name: string }

/** The canonical designation: "M8" for the coarse pitch, "M8×1" for a fine one, "5/16-18 UNC". */
export function threadName(thread: Thread): string {
  return thread.name
}

/** True when both are one and the same thread, so that a bolt of one enters a hole of the other. */
export function sameThread(a: Thread, b: Thread): boolean {
  return a.name === b.name
}
