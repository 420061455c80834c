import type { HoleQuantity, KindQuantity, ReadQuantity, Spot } from '../../readings/quantities.ts'
import type { Slip } from '../../readings/slip.ts'
import { Holes, holes } from './holes.ts'

const and = new Intl.ListFormat('en', { type: 'conjunction' })

const names: Record<ReadQuantity, string> = {
  grip: 'Grip',
  bottomDepth: 'Bottom depth',
  threadDepth: 'Thread depth',
  mouth: 'Mouth',
  bracket: 'Bracket',
  gasket: 'Gasket',
  behind: 'Room behind',
  length: 'Bolt length',
  threadLength: 'Thread length',
  tip: 'Tip',
}

const holeWhats: Record<HoleQuantity, string> = {
  grip: 'From under the head to the joint face: what the bolt clamps.',
  bottomDepth: 'From the joint face down to the bottom of the blind hole.',
  threadDepth: 'Length of full thread, from its first full turn to its last.',
  mouth: 'From the joint face to the first full thread: counterbore or chamfer.',
  bracket: 'Thickness of a bracket or clip under the head.',
  gasket: 'Thickness of the gasket as it is clamped.',
  behind: 'Free room for the tip behind a through hole.',
}

const kindWhats: Record<KindQuantity, string> = {
  length: 'From under the head to the very tip.',
  threadLength: 'Length of thread, measured from the tip.',
  tip: 'Incomplete thread at the tip.',
}

type Compared = 'grip' | 'bottomDepth' | 'threadDepth' | 'length'
const more: Record<Compared, string> = {
  grip: 'has more grip than',
  bottomDepth: 'is deeper than',
  threadDepth: 'has more thread than',
  length: 'is longer than',
}

export const readings = {
  title: 'Readings',
  names,
  whats: { ...holeWhats, ...kindWhats },
  tabs: { measure: 'Measure', ranks: 'Deeper than', tries: 'Try a bolt' },
  tabsLabel: 'What to do',
  noHoles: 'This face has no hole yet',
  noHolesWhat: 'Mark its holes first: a reading needs a hole to belong to.',
  noKinds: 'No bolts lie in the tray yet',
  noKindsWhat: 'Lay them out first: thread, length, count.',
  toFace: 'Mark holes',
  toTray: 'Lay out the tray',
  noSuch: (quantity: ReadQuantity) =>
    quantity === 'behind'
      ? 'No hole of this face is marked as a through hole, so there is no room behind to measure.'
      : 'Every hole of this face goes through: none has a bottom.',

  spot: (spot: Spot, name: string) =>
    spot.place === 'face' ? 'Whole face' : spot.place === 'hole' ? `Hole ${spot.id}` : name,
  ofSpot: (spot: Spot, name: string) =>
    spot.place === 'face' ? 'the whole face' : spot.place === 'hole' ? `hole ${spot.id}` : name,
  spotShort: (spot: Spot, name: string) => (spot.place === 'face' ? 'All' : spot.place === 'hole' ? spot.id : name),
  now: 'Measure now',
  changeQuantity: 'Another quantity',
  pickQuantity: 'What do you measure?',
  have: (count: number, of: number) => (count === of ? `all ${of}` : `${count} of ${of}`),
  ofHoles: 'Of the holes',
  ofBolts: 'Of the bolts',
  field: (quantity: string, spot: string) => `${quantity}, ${spot}`,
  asStands: (value: string) => `Read before: ${value}. A new reading takes its place.`,
  allHave: 'All are read',
  allHaveWhat: 'Pick one to take it again, or another quantity.',
  strip: (quantity: ReadQuantity) => `${names[quantity]} so far`,
  notRead: 'not read yet',
  keep: 'Keep',
  erase: 'Erase the last character',
  keys: 'Keys',
  hideKeys: 'Use the keyboard of the device',
  showKeys: 'Use these keys',

  kept: (quantity: ReadQuantity, spot: string, value: string) => `${names[quantity]} of ${spot}: ${value}. Kept.`,
  lately: 'Read just now',
  lookAgain: (kept: string) => `${kept} Look at it again.`,
  notKept: (spot: string, text: string) => `${spot}: ${text} was not kept.`,
  again: 'Take it again',
  stands: 'It is right',
  slip: (slip: Slip, spot: string, figure: (mm: number) => string): string => {
    switch (slip.is) {
      case 'point':
        return `${spot} reads about ten times off from the others (${figure(slip.others)}). Is the point in its place?`
      case 'unit':
        return `${spot} reads ${slip.typed === 'in' ? '25 times' : 'a 25th of'} the others (${figure(slip.others)}). Was it in ${slip.typed === 'in' ? 'mm' : 'inches'}?`
      case 'far':
        return slip.tens
          ? `The others read about ${figure(slip.others)}. A slip of ${figure(Math.abs(Math.round(slip.off / 10) * 10))}?`
          : `The others read about ${figure(slip.others)}. Is this one as it should be?`
      case 'long':
        return 'Longer than any bolt of such a face. Is the point in its place?'
      case 'below the bottom':
        return `Mouth and thread of ${spot} come to ${figure(slip.needed)}, but its bottom is at ${figure(slip.bottom)}. One of them is off.`
    }
  },
  nowSettled: (list: readonly string[]) => `${Holes(list)} ${list.length === 1 ? 'is' : 'are'} settled.`,
  nowOpen: (list: readonly string[]) => `${Holes(list)} ${list.length === 1 ? 'is' : 'are'} open again.`,
  nowContradicted: (list: readonly string[]) =>
    `This does not go with what was known: ${holes(list)} ${list.length === 1 ? 'is' : 'are'} contradicted now.`,

  settlesMost: 'Settles the most',
  lead: (what: string, settles: readonly string[]) =>
    settles.length === 0 ? what : `${what}. It would settle ${and.format(settles)}`,
  ofWhat: (quantity: ReadQuantity, what: string) => `${names[quantity]} of ${what}`,
  leadTry: (kind: string, hole: string) => `Turns of ${kind} in hole ${hole}`,
  leadHere: 'This one settles the most',
  goThere: 'Measure what settles most',
  goTry: 'Try it',

  instrument: (name: string, off: string) => `${name} ± ${off}`,
  instrumentLabel: 'Measured with',
  pickInstrument: 'What do you measure with?',
  instrumentWhat: 'Its ± goes with every reading into every verdict.',
  ownInstrument: 'Add an instrument',
  instrumentName: 'Name',
  instrumentOff: 'One reading may be off by ±',
  instrumentNumber: 'Number in the shop (if it has one)',
  instrumentAdd: 'Add and take it',
  instrumentNameNeeded: 'Give it a name.',
  instrumentNameTaken: 'There is one of this name already.',
  instrumentOffNeeded: 'Give the ± as one figure above zero.',

  compare: 'Which is more?',
  compareWhat: 'Seen or felt with a rod, without a figure. It narrows what belongs where all the same.',
  compareWhich: { grip: 'Grip', bottomDepth: 'Bottom depth', threadDepth: 'Thread depth', length: 'Bolt length' },
  pickMore: {
    grip: 'Tap the hole with more grip',
    bottomDepth: 'Tap the deeper hole',
    threadDepth: 'Tap the hole with more thread',
    length: 'Tap the longer bolt',
  },
  pickLess: (quantity: Compared, first: string) => `${first} ${more[quantity]} … tap the other`,
  pickOther: 'Pick another first one',
  rank: (quantity: Compared, one: string, other: string) => `${one} ${more[quantity]} ${other}`,
  rankKept: 'Comparison kept.',
  rankSame: 'This stands already.',
  rankOpposite: 'The opposite stands already: together they say that both are alike. Undo one if that is wrong.',
  ranksStated: 'Stated by hand',
  noRanks: 'Nothing compared yet.',
  undoThis: (what: string) => `Undo: ${what}`,
  chosen: 'picked first',

  tryHole: 'Which hole?',
  tryKind: 'Which bolt?',
  tryHow: 'What do you count?',
  tryTurns: 'Turns',
  tryProud: 'Head stands proud',
  turnsField: 'Turns from the first thread until the head seats',
  turnsUnit: 'turns',
  proudField: 'How far the head stands proud, turned in by hand',
  expect: (from: string, to: string) => (from === to ? `Expect ${from} turns.` : `Expect ${from} to ${to} turns.`),
  noExpect: 'No turns can be told before grip and length are known.',
  gentle: 'Turn by hand only. Where it stiffens, stop and back it out: do not force it.',
  notTurns: (text: string) => `“${text}” is no count of turns. Write 9 or 9.5.`,
  fewer: (count: string, expected: string) =>
    `${count} turns, ${expected} expected: it stops early. The tip may meet the bottom, or the thread is damaged. Look before you go on.`,
  moreTurns: (count: string, expected: string) =>
    `${count} turns, ${expected} expected: it goes deeper. Is it this bolt, and was the first thread caught at once?`,
  tried: (kind: string, hole: string, what: string) => `${kind} in hole ${hole}: ${what}`,
  tryThis: (kind: string, hole: string) => `${kind} in hole ${hole}`,
  turns: (count: string) => (count === '1' ? '1 turn' : `${count} turns`),
  stickOut: (length: string) => `sticks out ${length}`,
  proud: (length: string) => `stands proud by ${length}`,
  tries: 'Tried so far',
  noTries: 'Nothing tried yet.',

  air: 'Blowing out a blind hole: air below 30 psi (207 kPa) at the nozzle, chip guard and eye protection on, nobody in the way (29 CFR 1910.242(b)). What is left in the hole reads as a bottom that is too high. Local rules and a licensed professional’s judgement come first.',
  airSeen: 'I have read it',
}
