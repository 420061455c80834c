import type { Badge, Mark, Question, Shape } from '../../face/marks.ts'
import { rounds } from './rounds.ts'

const questions: Record<Question, string> = { 'came out': 'Came out', belongs: 'Belongs', 'to do': 'To do' }
const shapes: Record<Shape, string> = {
  plain: '',
  noted: 'noted',
  settled: 'settled',
  open: 'open',
  contradicted: 'contradicted',
}
const badges: Record<Badge, string> = {
  swap: 'the bolt must change',
  measure: 'to measure next',
  missing: 'a bolt is missing',
  check: 'check this hole',
}
const under: Record<Exclude<Mark['under'], readonly string[]>, string> = {
  empty: 'found empty',
  'not noted': 'not noted what sat here',
  'none fits': 'nothing in the tray fits',
  'no kinds': 'nothing to compare yet',
}

export const face = {
  questions,
  questionLabel: 'What the marks show',
  shapes,
  badges,
  under,
  mark: (hole: string, shape: string, kinds: string, badge: string) =>
    [`Hole ${hole}`, shape, kinds, badge].filter((part) => part !== '').join(', '),
  photographOf: 'Photograph of the face',
  holes: 'Holes',
  nearer: 'Nearer',
  further: 'Further away',
  nearerOrWhole: 'Nearer, and the whole again',
  whole: 'The whole face',
  addInMiddle: 'Mark a hole in the middle of the picture',
  pointInMiddle: 'Set the point in the middle of the picture',

  photographFirst: 'Photograph this face',
  photographHow:
    'Straight from above, the whole rim in the picture, light from one side. The photograph becomes the page: you tap the holes on it.',
  without: 'Mark holes without a photograph',
  replace: 'Another photograph',
  replaceWhat: 'The marks keep their places as shares of the picture. Move those that do not sit on their holes.',
  photographed: 'The photograph is kept.',

  markHoles: 'Mark holes',
  tray: 'Tray',
  // Where large letters leave no room for them in one line, these two are parted here.
  readings: 'Read\u00ADings',
  bench: 'Put it together',
  benchOn: 'Go on at the bench',
  benchNew: 'Step by step, one hole at a time',
  benchDone: 'Every step is done',
  benchClose: 'All bolts done. The face is to be closed',
  toFace: 'To the face',
  benchRounds: rounds,
  benchAt: (round: string, done: number, all: number) => `${round}: ${done} of ${all}`,
  benchStopped: (hole: string) => `The face stands still: hole ${hole} binds`,
  benchLeft: (who: string, when: string, hole: string | null) =>
    `Left by ${who}, ${when}${hole === null ? '' : `, at hole ${hole}`}`,
  tightening: 'Tight\u00ADening',
  markTitle: 'Tap every hole',
  markHow: 'Hold still for the magnifier. Drag a mark to move it; with the keyboard the arrow keys move it.',
  marked: (count: number) => (count === 0 ? 'None yet' : count === 1 ? '1 hole marked' : `${count} holes marked`),
  newThread: 'Thread of the holes you tap',
  otherThread: 'Another thread',
  done: 'Done',
  undoLast: 'Undo the last',
  moved: (hole: string) => `Hole ${hole} moved.`,

  scale: 'Set the scale',
  scaleSet: (millimetres: string) => `Scale set: one millimetre is ${millimetres} of the picture’s pixels.`,
  scaleTitle: 'Tap two points a known distance apart',
  scaleHow: 'Two dowels, the two ends of a rule laid on the face: the further apart, the better.',
  scaleFirst: 'Tap the first point.',
  scaleSecond: 'Now the second one.',
  scaleDistance: 'Distance between them',
  scaleAgain: 'Tap again',
  scaleSame: 'The two points are the same.',

  listTitle: 'All holes',
  noHoles: 'No holes yet',
  noHolesWhat: 'Mark the holes on the picture, then lay out the tray.',
  noTray: 'The tray is empty',
  noTrayWhat: 'Lay out the bolts that came out of this face: length, thread, how many.',
  noReadings: 'No readings yet',
  noReadingsWhat: 'A few grips or depths settle most holes. Gripbook says which ones.',
  askAsFound: (noted: number, holes: number) => `${noted} of ${holes} noted. Leave out what is not known for sure.`,

  noteFound: 'Pick a bolt, then tap the holes it sat in',
  noteOpen: 'Only look',
  noted: (hole: string, kind: string) => `Hole ${hole}: ${kind}.`,

  hole: (id: string) => `Hole ${id}`,
  asFound: 'What sat here',
  asFoundNone: 'Nothing',
  asFoundKept: (hole: string) => `Noted for hole ${hole}.`,
  addKind: 'Another bolt…',

  known: 'What is known of this hole',
  noReading: 'not measured',
  measure: 'Measure',
  describe: 'From the manual, or seen',
  leastEngagement: 'Least engagement',
  thread: 'Thread of the hole',
  ending: 'The hole ends',
  endings: { blind: 'blind', through: 'right through' },
  needs: 'The bolt must have (stud end, patch…)',
  needsHint: 'Several with commas.',
  torque: 'Torque from the manual',
  torqueHint: (face: string) => (face === '' ? 'The manual’s figure rules.' : `Empty: that of the face, ${face}.`),
  visit: 'Visit in which it is closed',
  locates: 'A dowel, reamed or shouldered place: started first',
  describeKept: (hole: string) => `Hole ${hole} described.`,
  strikeOut: 'Strike this hole out',
  struckOut: (hole: string) => `Hole ${hole} struck out.`,
  wholeNumber: 'Whole number of the visit, 1 or more.',
  noFace: 'This face is not there',
  noFaceWhat: 'It was struck out, or it comes from another device that has not sent it yet.',
  cautionOpen:
    'Loosen all bolts of a face a little before one comes out. Springs and check balls may lie behind it: eye protection on, part the joint slowly. Local rules and a licensed professional’s judgement come first.',
}
