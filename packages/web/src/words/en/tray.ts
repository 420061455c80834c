import { Holes } from './holes.ts'

const or = new Intl.ListFormat('en', { type: 'disjunction' })

const sizes = (thread: string, lengths: readonly number[]) => {
  const named = lengths.map((length) => `${thread}×${length}`)
  return named.length > 4 ? `${named[0]} to ${named.at(-1)}` : or.format(named)
}

export const tray = {
  title: 'Tray',
  drawing: (face: string) => `Tray of ${face}`,
  drawn: 'Drawn to scale',
  drawingNow: 'Drawing…',
  kinds: 'Bolts on the bench',
  kindsCount: (kinds: number, bolts: number) =>
    `${kinds === 1 ? '1 kind' : `${kinds} kinds`}, ${bolts === 1 ? '1 bolt' : `${bolts} bolts`}`,
  emptyTitle: 'Nothing lies in the tray yet',
  emptyWhat:
    'Sort the bolts of this face by thread and length, and lay each kind in: one reading and a count are enough.',
  noAnswer: 'What is left over or missing shows once the face has holes.',

  wanted: (thread: string, lengths: readonly number[], holes: readonly string[]) =>
    lengths.length === 0
      ? `${Holes(holes)} ${holes.length === 1 ? 'stays' : 'stay'} empty: no standard ${thread} fits as it was read.`
      : `${Holes(holes)} ${holes.length === 1 ? 'wants' : 'want'} ${sizes(thread, lengths)}, you have none to spare.`,
  leftOver: (count: number, kind: string, fits: readonly string[]) =>
    `Left over: ${count} of ${kind}.${fits.length > 0 ? ` ${count === 1 ? 'It fits' : 'They fit'} on ${or.format(fits)}.` : ''}`,
  short: (count: number) => `${count === 1 ? 'One bolt is' : `${count} bolts are`} missing.`,
  all: (holes: number) =>
    `Every bolt has its hole: ${holes === 1 ? '1 hole, none' : `${holes} holes, nothing`} left over.`,

  add: 'Add a kind',
  addTitle: 'Lay a kind in the tray',
  editTitle: (name: string) => name,
  edit: (name: string) => `Change ${name}`,
  shared: 'shared by all faces',
  count: (name: string) => `How many of ${name}`,
  countUnknown: '?',
  countUnknownSaid: 'count unknown',
  oneMore: (name: string) => `One more of ${name}`,
  oneLess: (name: string) => `One less of ${name}`,
  countKept: (name: string, count: number) => `${name}: ${count} of them.`,
  lengthUnknown: 'length unknown',

  thread: 'Thread',
  otherThread: 'Another thread',
  otherThreadHint: 'M8×1, 1/4-20 …',
  how: 'The length is',
  measured: 'measured',
  marked: 'the marked size',
  length: 'Length',
  lengthHint: 'From under the head to the very tip.',
  markedHint: 'The size in the catalogue, such as 45: the tolerance of its standard goes with it.',
  countField: 'How many',
  class: 'Class on the head',
  classUnknown: 'unknown',
  classMore: 'another…',
  features: 'What it has that others have not',
  otherFeature: 'Something else',
  addFeature: 'Add',
  head: 'Head',
  headForms: { hexagon: 'hexagon', 'hex flange': 'hex flange', 'socket cap': 'socket cap', stud: 'stud' } as Record<
    string,
    string
  >,
  headUnknown: 'unknown',
  acrossFlats: 'Width across flats',
  threadLength: 'Thread length, from the tip',
  washer: 'Washer under the head, thickness',
  captive: 'Washer',
  captiveNo: 'loose',
  captiveYes: 'cannot come off',
  note: 'Note',
  moreAbout: 'Features, head, washer',
  tray: 'It lies in the tray',
  thisFace: 'of this face',
  allFaces: 'shared by all faces',
  keepNext: 'Keep and next',
  keepClose: 'Keep and close',
  keepChanges: 'Keep',
  kept: (name: string, count: string) => `Kept: ${name}${count === '' ? '' : `, ${count} of them`}.`,
  changed: (name: string) => `${name} changed.`,
  twin: (name: string, count: number | undefined) =>
    `${name} lies there already${count === undefined ? '' : `, ${count} of them`}. The same bolts?`,
  countThere: (count: number) => (count === 1 ? 'Count it there' : `Count these ${count} there`),
  needed: { thread: 'Choose a thread.', form: 'Choose the head that this width belongs to.' } as Record<string, string>,
  notCount: 'Give a whole number, 0 or more.',

  comeAndGo: 'Bolts that come or go',
  addBolts: 'Add bolts',
  writeOff: 'Write off',
  howMany: 'How many',
  from: 'From where',
  fromHint: 'new, found again …',
  reason: 'Why',
  otherReason: 'Or in your words',
  reasons: ['stretched', 'thread damaged', 'head rounded', 'lost'],
  reasonNeeded: 'Say why: it stands in the record.',
  countNeeded: 'Give a whole number above 0.',
  added: (count: number, name: string) => `${count} of ${name} added.`,
  writtenOff: (count: number, name: string) => `${count} of ${name} written off.`,
  strike: 'Strike this kind out',
  struck: (name: string) => `${name} struck out.`,
  stretched:
    'A bolt that was tightened to stretch, or a locking bolt that was once loosened, is replaced: common practice. What the service manual says rules; local rules and a licensed professional’s judgement come first.',
  stretchedSeen: 'I have read it',
}
