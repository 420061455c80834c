import type { ClockSort } from '../../bench/clocks.ts'
import type { Cause, Feel } from '../../bench/resistance.ts'
import type { Round } from '../../bench/round.ts'
import type { WrenchDoubt } from '../../bench/torque.ts'
import { rounds } from './rounds.ts'

const and = new Intl.ListFormat('en', { type: 'conjunction' })
/** "9, 10" and not "10, 9": numbers in names count as numbers. */
const inOrder = (list: readonly string[]) =>
  and.format(list.toSorted(new Intl.Collator('en', { numeric: true }).compare))
const holes = (list: readonly string[]) => `${list.length === 1 ? 'hole' : 'holes'} ${inOrder(list)}`
const Holes = (list: readonly string[]) => `${list.length === 1 ? 'Hole' : 'Holes'} ${inOrder(list)}`
const percent = (share: number) => `${Number((share * 100).toFixed(1))} %`
const isOrAre = (list: readonly string[]) => (list.length === 1 ? 'is' : 'are')
const LOCAL = 'Local rules and the manual come first.'

const feels: Record<Feel, string> = {
  'stiff from the first turn': 'Stiff from the first turn',
  'stiff near the end': 'Stiff near the end',
  'dead stop': 'Dead stop, head off its seat',
  springy: 'Springy: it gives and pushes back',
}

const causes: Record<Cause, string> = {
  'wrong bolt': 'Not the bolt for this hole',
  crossed: 'Crossed or damaged thread',
  bottomed: 'Too long, or chips in the hole',
  caught: 'Something caught in the joint',
  reading: 'Miscounted, or a reading is wrong',
}

const looks: Record<Cause, string> = {
  'wrong bolt': 'Back it out. Lay it beside its drawing and take the bolt that belongs.',
  crossed:
    'Back it out with the fingers. Look at the first threads of the bolt, then into the hole: bright, flattened or folded threads. Chase the thread before another bolt goes in.',
  bottomed:
    'Back it out. Measure the bolt and the hole’s depth, and look for chips or oil at the bottom of a blind hole.',
  caught:
    'Look along the edge for a gap. Back out this bolt and its neighbours until the cover lies by its own weight: a wire, a seal, a dowel or a plate may be pinched.',
  reading: 'Count once more with the bolt backed out. If it is the same, measure grip and length again.',
}

export const bench = {
  title: 'At the bench',
  pageOf: (face: string) => `${face}, at the bench`,
  noHoles: 'This face has no hole yet',
  noHolesWhat: 'Mark its holes first: every step is at one of them.',

  rounds,
  roundOf: (round: Round) =>
    round.what === 'pass'
      ? round.of === 1
        ? `Pass, ${percent(round.share)}`
        : `Pass ${round.number} of ${round.of}, ${percent(round.share)}`
      : rounds[round.what],
  visit: (visit: number) => `Visit ${visit}`,
  count: (done: number, all: number) => `${done} of ${all}`,
  progress: (round: string, done: number, all: number) => `${round}: ${done} of ${all} done`,
  hole: (hole: string) => `Hole ${hole}`,
  isDone: 'Done',
  doneBy: (who: string, at: string) => `Done: ${who}, ${at}`,
  lookingAt: 'You are looking at another step.',
  toNow: 'To what is next',

  zoomed: 'The whole face',
  whole: 'Only this hole',
  pictureOf: (hole: string) => `Hole ${hole} on the picture`,
  wholePicture: 'The whole face',
  trueSize: 'True size: lay it on',
  aboutSize: 'About true size',
  smaller: (times: number) => `1 : ${times}`,

  kindUnknown: 'Which bolt?',
  kindUnknownWhat: 'It is not settled which bolt belongs here. Choose the one in your hand.',
  noKind: 'No bolt known',
  likeliest: 'Likeliest',
  foundHere: 'As found',

  start: 'Turn it in with the fingers, two turns at least.',
  startFree: 'It must turn freely from the first thread.',
  startFirst: 'This one first: it places the cover.',
  started: 'Started by hand',
  runDown: 'Down with the fingers or a light ratchet until the head touches. No power tool.',
  turns: (from: string, to: string) =>
    from === to ? `${from} turns until the head seats` : `${from} to ${to} turns until the head seats`,
  turnsUnknown: 'How many turns is not known: grip or length is not read.',
  turnsUsual: 'Free all the way, no springing, the head flat on its seat.',
  seated: 'Head on its seat',
  seatedAfter: (turns: string) => `Seated after ${turns} turns`,
  turnsField: 'Turns counted',
  fewerTurn: 'Half a turn less',
  moreTurn: 'Half a turn more',
  notTurns: (text: string) => `“${text}” is no count of turns.`,
  fewer: (turns: string, expected: string) =>
    `The head sits after ${turns} turns, ${expected} were expected: another bolt, a grip that was read wrong, or something lies under the head.`,
  more: (turns: string, expected: string) =>
    `${turns} turns, ${expected} were expected: a longer bolt, a thinner grip, or a thread that turns without holding.`,
  countAgain: 'Count again',
  keepCount: 'The count is right',
  snug: 'Just until it resists: no gap under the head, no more.',
  snugged: 'Snug',
  restSnug: (count: number) => `All ${count} left are snug`,
  mark: 'A paint line across head and seat: what has turned since then shows.',
  marked: 'Marked',
  restMarked: (count: number) => `All ${count} left are marked`,
  close: 'Nothing left in the joint, every bolt marked. Closed, what lies behind is out of reach.',
  closeIt: 'The face is closed',
  finished: 'This face is done',
  finishedWhat: 'Every bolt has its final pass, and the face is closed.',

  bracket: (name: string) => `${name} goes under this head`,
  wayRound: (how: string) => `As found: ${how}`,
  bracketPicture: (name: string) => `${name} as found`,
  bracketThere: 'A bracket goes under this head',
  needs: (features: readonly string[]) => `This hole needs: ${and.format(features)}`,

  tool: 'With',
  fingers: 'Fingers',
  lightRatchet: 'Fingers or light ratchet',
  socket: (flats: string) => `socket ${flats} mm`,
  wrench: 'Wrench',

  wanted: (figure: string, unit: string) => `${figure} ${unit}`,
  setTo: (figure: string, unit: string) => `Set ${figure} ${unit} on the wrench`,
  noTorque: 'No torque is stated for this hole',
  noTorqueWhat: 'State the manual’s torque on the face, or tighten by feel.',
  clicked: (figure: string, unit: string) => `Clicked at ${figure} ${unit}`,
  keepTorque: 'Keep the torque',
  keepThis: (figure: string, unit: string) => `Keep ${figure} ${unit}`,
  torqueShort: (unit: string) => `On the wrench, ${unit}`,
  lessTorque: 'A little less',
  moreTorque: 'A little more',
  back: 'Back to the face',
  torqueField: (hole: string) => `Torque on the wrench, hole ${hole}`,
  otherFigure: 'Another figure',
  itClicks: 'It clicks',
  standing: (reason: string) => `Used out of date, the reason on the record: ${reason}`,
  byFeel: 'By feel',
  byFeelWhat: 'No figure is kept. The record says “by feel”.',
  tightenByFeel: 'Tightened by feel',
  notTorque: (text: string) => `“${text}” is no torque.`,
  below: (reached: string, from: string, to: string) => `${reached} is too little. Wanted: ${from} to ${to}.`,
  belowWhat: 'Pull on slowly until it is reached, then enter the new figure.',
  above: (reached: string, from: string, to: string) => `${reached} is too much. Wanted: ${from} to ${to}.`,
  aboveWhat:
    'Do not turn it back to the figure. Take the bolt out, look at its thread and the hole’s; a stretched bolt is replaced. Start it again by hand.',
  takeOut: 'Taken out: start it again',
  outReason: 'Torque too high',
  enterAgain: 'Enter it again',

  chooseWrench: 'Choose the wrench',
  wrenchTitle: 'With which wrench?',
  wrenchWhat: 'Once per face. It goes into the record with each torque.',
  changeWrench: 'Change the wrench',
  noWrenches: 'No wrench is known on this device yet.',
  addWrench: 'Add a wrench',
  wrenchName: 'Name',
  wrenchNameNeeded: 'Give it a name.',
  wrenchNameTaken: 'A wrench of this name is there already.',
  wrenchNumber: 'Number in the shop',
  wrenchTells: 'How does it tell?',
  tells: { clicks: 'It clicks', shows: 'It shows or types', nothing: 'No reading' },
  wrenchFrom: 'Least torque',
  wrenchTo: 'Greatest torque',
  wrenchDeviation: 'Deviation, ± %',
  wrenchDeviationHint: 'From its certificate. Left out: ±4 % above 10 N·m, ±6 % at or below (ISO 6789).',
  wrenchUntil: 'Calibrated until',
  wrenchRangeFault: 'Write both ends, the least first.',
  wrenchDeviationFault: 'Write a share from 0.1 to 50 %.',
  wrenchKeep: 'Use this wrench',
  wrenchRemove: 'Take it off the list',
  feelWrench: 'Ratchet, no reading',
  wrenchLine: (range: string | null, until: string | null) =>
    [...(range === null ? [] : [range]), ...(until === null ? [] : [`calibrated until ${until}`])].join(' · '),
  noDate: 'no calibration date',
  doubts: {
    'below its range': 'What is wanted lies below its range. Take a smaller wrench.',
    'above its range': 'What is wanted lies above its range. Take a larger wrench.',
    'lowest fifth': 'In the lowest fifth of its range, where it is not checked.',
    'no date': 'No calibration date is known.',
    'out of date': 'Its calibration has run out.',
  } satisfies Record<WrenchDoubt, string>,
  extension: 'Crow-foot or extension',
  noExtension: 'Straight on the wrench',
  withExtension: 'Crow-foot',
  lever: 'Wrench: middle of the hand to the square',
  reach: 'From the square to the middle of the bolt',
  angle: 'Angle, degrees',
  angleHint: '0 in line with the wrench, 90 square to it.',
  extensionFault: 'With these lengths nothing can be set.',
  extensionName: (reach: string) => `crow-foot ${reach}`,
  extensionNote: 'A straight extension bar changes nothing. A swivel adds scatter: use the least angle.',

  undo: 'Undo',
  isUndone: (what: string) => `Undone: ${what}`,
  nothingToUndo: 'Nothing on this face was done from this device.',
  behind: (parts: readonly string[]) => `Still out behind this face: ${and.format(parts)}.`,
  notDoneAt: (list: readonly string[]) => `Not finished yet: ${holes(list)}.`,
  binds: 'It binds',
  moreWays: 'More',
  ways: 'At the bench',
  steps: 'All steps',

  bindsTitle: (hole: string) => `Hole ${hole} binds`,
  bindsStop: 'Stop turning. How does it feel?',
  bindsTurns: 'Turns so far, if you counted',
  feels,
  bindsOther: 'Something else',
  bindsOtherField: 'How does it feel?',
  bindsKeep: 'Stop the face',
  stopped: 'The face stands still',
  felt: (hole: string, feel: string) => `Hole ${hole}: ${feel.charAt(0).toLowerCase()}${feel.slice(1)}`,
  feltAfter: (turns: string) => `after ${turns} turns`,
  doNotPull: 'Do not pull it down with the wrench.',
  canBe: 'What it can be, the likeliest first',
  causes,
  looks,
  backOut: (hole: string) => `Hole ${hole} is backed out`,
  backOutAll: (count: number) => `All ${count} are backed out`,
  backedOut: (list: readonly string[]) => `${Holes(list)} ${isOrAre(list)} backed out.`,
  isOut: (hole: string) => `Hole ${hole} is out. It starts again by hand.`,
  foundTitle: 'What was it?',
  foundField: 'What you found',
  foundNeeded: 'Say what it was: it stays on the record.',
  foundWords: {
    'wrong bolt': 'Wrong bolt: changed',
    crossed: 'Thread damaged: chased, bolt replaced',
    bottomed: 'Chips or oil in the hole: cleaned',
    caught: 'Something was caught: freed',
    reading: 'Miscounted: nothing wrong',
  } satisfies Record<Cause, string>,
  clear: 'Cleared: go on',
  stoppedBy: (who: string) => `Reported: ${who}`,

  stopTitle: 'Stop',
  goThere: (hole: string) => `To hole ${hole}`,
  goAllTheSame: 'Go on all the same',
  whySame: 'Why? It stays on the record.',
  whyNeeded: 'Give a reason.',
  writeAndGo: 'Keep the reason and go on',
  overridden: 'Gone on with a reason on the record.',
  stops: {
    locating: (list: readonly string[]) =>
      `${Holes(list)} first: ${list.length === 1 ? 'it places' : 'they place'} the cover.`,
    started: (list: readonly string[]) => `Not started by hand yet: ${holes(list)}.`,
    startedWhy: 'Once one is down, the others no longer find their threads.',
    down: (list: readonly string[]) => `Not run down yet: ${holes(list)}.`,
    snug: (list: readonly string[]) => `Not snug yet: ${holes(list)}.`,
    pass: (pass: number, list: readonly string[]) => `Pass ${pass} is not complete: ${holes(list)}.`,
    visit: (visit: number, list: readonly string[]) => `Visit ${visit} is not complete: ${holes(list)}.`,
    resistance: (list: readonly string[]) => `Resistance at ${holes(list)} is not cleared.`,
    belongs: (kind: string, may: readonly string[]) =>
      may.length === 0
        ? `${kind} does not belong here.`
        : `${kind} does not belong here. What may: ${and.format(may)}.`,
    range: 'The wrench does not reach this torque.',
    calibration: (until: string) => `The wrench’s calibration ran out on ${until}.`,
    unfinished: (list: readonly string[]) => `Without their final pass: ${holes(list)}.`,
    unplaced: (list: readonly string[]) => `No bolt placed in ${holes(list)}.`,
    part: (parts: readonly string[]) => `Still out: ${and.format(parts)}.`,
    other: 'Something is still open here.',
  },

  pause: 'Pause',
  paused: 'Paused. Go on from here on any device.',
  elsewhere: (who: string) => `${who} is working here too.`,

  why: 'Why this bolt?',
  another: 'Another one is in',
  anotherTitle: (hole: string) => `Which one is in hole ${hole}?`,
  anotherFits: (kind: string) => `${kind} fits here too. It may stay.`,
  anotherFitsButMissing: (kind: string, list: readonly string[]) =>
    `${kind} fits here, but ${holes(list)} may be short of it then.`,
  anotherMay: (kind: string) => `${kind} may fit: the readings do not settle it.`,
  anotherCannot: (kind: string) => `${kind} cannot stay here.`,
  anotherCannotWhat: 'Back it out, even if it has its torque: it looks perfect from outside.',
  itStays: 'It stays',
  itComesOut: 'It comes out',
  short: 'I am one short',
  shortTitle: (kind: string) => `One ${kind} short`,
  shortPlaced: (kind: string, list: readonly string[]) => `${kind} went into ${holes(list)} so far. Look there first.`,
  shortWrong: (list: readonly string[]) => `It does not belong in ${holes(list)}, and sits there: take it from there.`,
  shortNone: (kind: string) => `No hole has a ${kind} so far.`,
  shortCount: (kind: string, count: number, wanted: number) =>
    `${count} of ${kind} were counted, ${wanted} ${wanted === 1 ? 'hole wants' : 'holes want'} one.`,
  shortInstead: (kinds: readonly string[]) => `What else fits hole and readings: ${and.format(kinds)}.`,
  shortNothing: 'Nothing else in the tray fits this hole.',
  shortGet: (sizes: readonly string[]) => `Standard sizes that would fit: ${and.format(sizes)}.`,
  shortElsewhere: (kind: string, faces: readonly string[]) =>
    `${kind} also belongs to ${and.format(faces)}: look in that tray.`,
  shortNever: 'Do not leave the hole empty and do not take a bolt that only looks alike.',

  clocks: 'Clocks',
  clockStart: 'Start a clock',
  clockTitle: 'What is running?',
  clockSorts: {
    sealant: 'Sealant is open',
    soaking: 'Plates soak',
    warmed: 'A part is warm',
    other: 'Something else',
  } satisfies Record<ClockSort, string>,
  clockWhats: {
    sealant: 'Sealant open',
    soaking: 'Plates soaking',
    warmed: 'Part warm',
    other: 'Clock',
  } satisfies Record<ClockSort, string>,
  clockName: 'What is it?',
  clockMinutes: 'Minutes, as your product sheet says',
  clockMinutesUnit: 'min',
  clockMinutesFault: 'Write the minutes of the product sheet.',
  clockGo: 'Start the clock',
  clockStop: (what: string) => `Stop the clock: ${what}`,
  clockStopWord: 'Stop',
  clockStopped: (what: string) => `${what}: stopped.`,
  clockOver: 'Time is up',
  clockSaid: (what: string) => `${what}: time is up.`,

  awake: 'The screen stays on.',
  notAwake: 'This device does not let the page keep its screen on. Set its own time-out longer.',

  voice: 'Say each step',
  voiceOn: 'On',
  voiceOff: 'Off',
  voiceNone: 'This device has no voice.',
  spoken: {
    start: (hole: string, kind: string) => `Hole ${hole}. ${kind}. Start by hand.`,
    down: (hole: string, turns: string | null) =>
      turns === null ? `Hole ${hole}. Run down.` : `Hole ${hole}. Run down. ${turns} turns.`,
    snug: (hole: string) => `Hole ${hole}. Snug.`,
    pass: (hole: string, torque: string | null) =>
      torque === null ? `Hole ${hole}. By feel.` : `Hole ${hole}. ${torque}.`,
    mark: (hole: string) => `Hole ${hole}. Mark it.`,
    close: 'All done. Close the face.',
    stopped: (hole: string) => `Stop. Hole ${hole} binds.`,
    torqueUnits: {
      N·m: 'newton metres',
      lbf·ft: 'pound feet',
      lbf·in: 'pound inches',
      kgf·m: 'kilogram metres',
    } as Record<string, string>,
    times: 'by',
    kindBy: (thread: string, length: string) => `${thread} by ${length}`,
  },

  pedal: 'Foot pedal',
  pedalWhat: 'A pedal types a key. It then means: done.',
  pedalNow: (key: string) => `Its key: ${key}`,
  pedalNone: 'No pedal chosen. Enter and the space bar always mean done.',
  pedalPress: 'Press the pedal now…',
  pedalChoose: 'Choose its key',
  pedalForget: 'Forget it',
  pedalNot: (key: string) => `${key} already means something here. Set the pedal to another key.`,
  keyName: (key: string) => (key === ' ' ? 'space bar' : key),
  keysTitle: 'Keys',
  keysWhat:
    'Enter or space: done. Backspace: undo. B: it binds. Arrows: look at other steps. Digits: a torque or turns.',
  settingsTitle: 'At the bench',
  wrenches: 'Wrenches',

  cautionWrench: `More small bolts break by too much than by too little: pull slowly, stop at the click, never a second click. ${LOCAL}`,
  cautionSpring: `Springs or plates behind this cover press it up: draw it down evenly, a little at each bolt, hands clear, eyes covered. ${LOCAL}`,
  cautionAir: `Chips are blown out of a hole only below 2 bar (30 psi) with eyes covered, a rag over the hole, never towards people (29 CFR 1910.242). ${LOCAL}`,
  cautionSealant: `Gloves on, room aired, no flame near solvent. Never sealant into a blind hole: the bolt may not seat. ${LOCAL}`,
  cautionWarm: `A warmed part burns within seconds from 60 °C: gloves for heat. ${LOCAL}`,
  cautionSeen: 'I have read it',
  manual: 'The manual rules. Figures here are checks.',
}
