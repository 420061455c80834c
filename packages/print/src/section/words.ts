import type { Line, PairVerdict } from '@gripbook/engine'

/** What one line of a fit says at the spot: by how much it holds, by how much it fails. `mm` is a length with its unit. */
type Words = { fails: (mm: string) => string; holds: (mm: string) => string; unsure: string; bare: string }

const SPOT: Record<Line, Words> = {
  thread: {
    fails: () => 'the thread is another size',
    holds: () => 'same thread',
    unsure: 'may be another thread',
    bare: 'the thread is another size',
  },
  feature: {
    fails: () => 'a feature is missing',
    holds: () => 'has the feature',
    unsure: 'may lack a feature',
    bare: 'a feature is missing',
  },
  engagement: {
    fails: (mm) => `too short by ${mm}`,
    holds: (mm) => `${mm} more thread than needed`,
    unsure: 'may be too short',
    bare: 'too short',
  },
  'bolt thread': {
    fails: (mm) => `the bolt’s thread is ${mm} too short`,
    holds: (mm) => `the bolt’s thread is ${mm} longer than needed`,
    unsure: 'the bolt’s thread may be too short',
    bare: 'the bolt’s thread is too short',
  },
  'hole thread': {
    fails: (mm) => `the hole’s thread is ${mm} too short`,
    holds: (mm) => `the hole’s thread is ${mm} longer than needed`,
    unsure: 'the hole’s thread may be too short',
    bare: 'the hole’s thread is too short',
  },
  bottom: {
    fails: (mm) => `bottoms: tip ${mm} past the bottom; head would stand ${mm} proud`,
    holds: (mm) => `tip ${mm} clear of the bottom`,
    unsure: 'may bottom',
    bare: 'bottoms',
  },
  'run-out': {
    fails: (mm) => `jams: full thread ${mm} into the run-out; head would stand ${mm} proud`,
    holds: (mm) => `thread ends ${mm} before the run-out`,
    unsure: 'may jam in the run-out',
    bare: 'jams in the run-out',
  },
  behind: {
    fails: (mm) => `stands ${mm} too far out behind`,
    holds: (mm) => `tip ${mm} clear of what is behind`,
    unsure: 'may stand too far out behind',
    bare: 'stands too far out behind',
  },
  shank: {
    fails: (mm) => `shank jams: ${mm} past the first full thread; head would stand ${mm} proud`,
    holds: (mm) => `shank ${mm} clear of the thread`,
    unsure: 'the shank may jam',
    bare: 'the shank jams',
  },
  hole: {
    fails: () => 'the hole’s own figures contradict each other',
    holds: () => 'the hole’s figures agree',
    unsure: 'the hole’s figures may not agree',
    bare: 'the hole’s own figures contradict each other',
  },
  kind: {
    fails: () => 'the bolt’s own figures contradict each other',
    holds: () => 'the bolt’s figures agree',
    unsure: 'the bolt’s figures may not agree',
    bare: 'the bolt’s own figures contradict each other',
  },
  together: {
    fails: () => 'no line fails by itself, but not all can hold at once',
    holds: () => 'all lines hold at once',
    unsure: 'cannot be told before more is measured',
    bare: 'no line fails by itself, but not all can hold at once',
  },
}

export const VERDICT: Record<PairVerdict, string> = { fits: 'fits', may: 'may fit', cannot: 'cannot fit' }

/** Names at the dimension lines and at the leaders. */
export const NAMES = {
  bracket: 'bracket',
  grip: 'grip',
  gasket: 'gasket',
  washer: 'washer',
  mouth: 'mouth',
  threadDepth: 'thread',
  stickOut: 'stick-out',
  bottom: 'bottom',
  behind: 'behind',
  seat: 'seat',
  engaged: 'engaged',
  needed: 'needed',
  incomplete: 'incomplete thread',
  passage: 'passage behind',
  bottomUnknown: '? bottom not known',
  wallUnknown: '? wall not known',
  behindUnknown: '? depth not known',
  lengthUnknown: '? length not known',
  gripUnknown: '? grip not known, so the tip has no place',
  empty: 'no bolt',
} as const

/** What a margin says at the spot. `drawn`: the figure as drawn, where it is more than the margin that is certain. */
export function spotWords(
  line: Line,
  verdict: PairVerdict,
  margin: number | null | [number | null, number | null],
  length: (mm: number) => string,
): string {
  const words = SPOT[line]
  if (verdict === 'may') {
    const [worst, best] = Array.isArray(margin) ? margin : [margin, margin]
    const over = worst !== null && worst < 0 ? ` by up to ${length(-worst)}` : ''
    const spare = best !== null && best > 0 ? `, or hold by ${length(best)}` : ''
    return `${words.unsure}${over}${spare}`
  }
  const mm = Array.isArray(margin) ? margin[0] : margin
  if (verdict === 'fits') return mm === null ? words.holds('').replace(/\s+/g, ' ').trim() : words.holds(length(mm))
  return mm === null ? words.bare : words.fails(length(Math.abs(mm)))
}
