import type { Conflict, NextReading, Statement, Wanted } from '@gripbook/engine'

const LANG = 'en'
const or = new Intl.ListFormat(LANG, { type: 'disjunction' })
const and = new Intl.ListFormat(LANG, { type: 'conjunction' })

const QUANTITIES: Record<string, string> = {
  grip: 'grip',
  bracket: 'bracket thickness',
  gasket: 'gasket thickness',
  mouth: 'mouth depth',
  threadDepth: 'thread depth',
  bottomDepth: 'bottom depth',
  behind: 'room behind',
  minimumEngagement: 'least engagement',
  length: 'length',
  threadLength: 'thread length',
  tip: 'tip length',
  washer: 'washer thickness',
}

type Named = (kind: string) => string

function check(statement: Statement, named: Named): string {
  switch (statement.what) {
    case 'reading':
      return `Check the ${QUANTITIES[statement.quantity] ?? statement.quantity} of ${statement.place === 'kind' ? named(statement.of) : `${statement.place} ${statement.of}`}`
    case 'count':
      return `Count ${named(statement.of)} again`
    case 'rank':
      return statement.quantity === 'length'
        ? `Compare ${named(statement.less)} and ${named(statement.more)} again`
        : `Compare the ${QUANTITIES[statement.quantity] ?? statement.quantity} of holes ${statement.less} and ${statement.more} again`
    case 'trial':
      return `Try ${named(statement.kind)} in hole ${statement.hole} again`
  }
}

export const verdict = {
  verdicts: { settled: 'Settled', open: 'Open', contradicted: 'Contradicted' },
  counts: (settled: number, open: number, contradicted: number) =>
    [
      `${settled} settled`,
      ...(open > 0 ? [`${open} open`] : []),
      ...(contradicted > 0 ? [`${contradicted} contradicted`] : []),
    ].join(' · '),
  working: 'Working it out…',
  stop: 'Stop',
  failed: 'The sum failed. What you entered is kept.',

  doubt: ({ why, doubt }: Conflict, named: Named) => {
    const first = doubt[0]?.statements[0]
    const what = `${why.charAt(0).toUpperCase()}${why.slice(1)}.`
    return first === undefined ? what : `${what} ${check(first, named)} first.`
  },
  check,
  doubtTitle: 'What to doubt, the likeliest first',
  likely: (share: number) => `${Math.round(share * 100)} %`,
  swap: (a: string, b: string) => `Swap ${a} and ${b}`,
  ring: (holes: readonly string[]) => `Move round ${holes.join(' → ')}`,
  emptyHole: (hole: string) => `Take the bolt out of ${hole}`,
  moveFrom: (from: string, to: string) => `Move the bolt of ${from} to ${to}`,
  put: (kind: string, hole: string) => `Put ${kind} in ${hole}`,
  /** One line for each hand's move. */
  handOut: (hole: string, kind: string) => `Take ${kind} out of ${hole}`,
  handIn: (hole: string, kind: string) => `${kind} into ${hole}`,
  handInFrom: (hole: string, kind: string, from: string) => `${kind} from ${from} into ${hole}`,
  handStays: (hole: string) => `${hole} stays empty`,
  get: ({ hole, thread, lengths }: Wanted, tooFew: boolean, asRead: boolean) => {
    if (lengths.length === 0) return `Hole ${hole} stays empty: no standard ${thread} fits it as it was read`
    const sizes = lengths.map((length) => `${thread}×${length}`)
    const named = sizes.length > 4 ? `${sizes[0]} to ${sizes.at(-1)}` : or.format(sizes)
    return `${asRead ? 'Taken as read, hole' : 'Hole'} ${hole} wants ${named}, you have ${tooFew ? 'too few' : 'none'}`
  },
  measure: ({ reading, settles }: NextReading, named: Named) => {
    const what =
      reading.quantity === 'turns'
        ? `Count the turns of ${reading.kind === undefined ? 'a bolt' : named(reading.kind)} in hole ${reading.of}`
        : reading.place === 'kind'
          ? `Measure the ${QUANTITIES[reading.quantity] ?? reading.quantity} of ${named(reading.of)}`
          : `Measure hole ${reading.of} (${QUANTITIES[reading.quantity] ?? reading.quantity})`
    return settles.length > 0
      ? `${what} to settle ${and.format(settles)}`
      : `${what}: it says most of what is still open`
  },
  layAside: (kind: string, count: number, fits: readonly string[]) =>
    `Left over: ${count} of ${kind}${fits.length > 0 ? `. It would fit on ${or.format(fits)}` : ''}`,
  leftOverWhy: 'In the likeliest placement every hole has its bolt, and this is not among them.',
  nothingToDo: 'Every bolt sat where it belongs',
  allPlaced: 'Every hole has its bolt',
  openLeft: (count: number) =>
    count === 1 ? 'Nothing must change. One hole is open still' : `Nothing must change. ${count} holes are open still`,
  why: 'Why',
  take: 'Take this reading',

  mustChange: 'must change',
  mayStay: 'may stay',
  right: 'right',
  isInNow: (kind: string) => `${kind} is in now`,
  foundHere: (kind: string) => `Found: ${kind}`,
  foundEmpty: 'Found: nothing',
  belongs: (kind: string) => `${kind} belongs here`,
  oneOf: (kinds: readonly string[]) => `${or.format(kinds)}`,
  noneFits: 'Nothing in the tray fits',
  proven: 'Proven by readings, not only by what the tray holds.',
  notProven: 'By what lies in the tray. Another standard length that is not in it could fit too.',
  chance: (share: number) =>
    share > 0.995 && share < 1
      ? 'above 99 %'
      : share > 0 && share < 0.01
        ? 'below 1 %'
        : `${Math.round(share * 100)} %`,
  pairs: 'Each bolt in this hole',
  pairVerdicts: { fits: 'fits', may: 'may fit', cannot: 'cannot' },
  margin: (margin: string) => `margin ${margin}`,
  turns: (from: string, to: string) =>
    from === to ? `${from} turns until the head seats` : `${from} to ${to} turns until the head seats`,
  close: (what: string) => `Close: ${what}.`,
  sectionOf: (kind: string) => `Show ${kind} in it`,
  sampled: (error: string) => `Likelihoods are sampled, standard error ${error}.`,
  notPermission:
    'A check, not a permission. Torques, limits and orders of the service manual rule; local rules and a licensed professional’s judgement come first.',
  leftOut: (count: number) =>
    `${count === 1 ? 'One entry' : `${count} entries`} could not be computed with: something it speaks of is gone.`,
}
