/** How long to wait after `failures` (1, 2, 3 …) in a row, in ms: twice as long each time up to the longest, of which a drawn half is left out so that the devices of a shop do not come all at once. */
export function pauseAfter(
  failures: number,
  { firstPause, longestPause }: { firstPause: number; longestPause: number },
  random: (bytes: number) => Uint8Array,
): number {
  const full = Math.min(firstPause * 2 ** Math.min(failures - 1, 30), longestPause)
  const [drawn = 0] = random(1)
  return full / 2 + (full / 2) * (drawn / 255)
}
