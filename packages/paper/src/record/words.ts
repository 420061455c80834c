/** Every sentence of a build record. */
import { runsOf } from '@gripbook/print'
import type { BuiltFigure, BuiltPart, BuiltSignature, Caution, RecordState, StopName } from '@gripbook/record'

const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`

export const words = {
  title: (unit: string) => `Build record: ${unit}`,
  head: 'Build record',
  unnamed: 'unit without a name',

  state: {
    released: 'RELEASED',
    'released open': 'RELEASED WITH THINGS OPEN',
    'does not fit': 'THE RELEASE DOES NOT FIT',
    'changed since': 'CHANGED SINCE ITS RELEASE',
    'came back': 'CAME BACK, NOT RELEASED',
    'not released': 'NOT RELEASED',
    'state only': 'NO STORY, NOT RELEASED',
  } satisfies Record<RecordState, string>,
  stateMeans: {
    released: (who: string, at: string) => `By ${who}, ${at}. Nothing was entered since, nothing is open.`,
    'released open': (who: string, at: string) => `By ${who}, ${at}, while things were open. They are listed below.`,
    'does not fit': (who: string, at: string) =>
      `${who} released it ${at}, but the entries are not those that were released: they have another hash.`,
    'changed since': (who: string, at: string) =>
      `Released by ${who}, ${at}. What was entered afterwards is listed below; no release covers it.`,
    'came back': () => 'It came back after its release. That release no longer holds.',
    'not released': () =>
      'This record is not finished. It proves nothing about the unit; what is open is listed below.',
    'state only': () =>
      'This was made from a unit file. A file holds how a unit stands, not who did what and when: there are no signatures, no torques, no hash of entries.',
  } satisfies Record<RecordState, (who: string, at: string) => string>,

  unit: { job: 'Job', takenIn: 'Taken in by', history: 'History' },
  person: (id: string) => `person ${id}`,
  by: (who: string, at: string) => `${who}, ${at}`,

  wrong: 'What was wrong',
  changed: 'What was changed',
  proven: 'Is it proven?',
  nothingWrong: 'Nothing was entered as wrong.',
  nothingChanged: 'Every bolt went back where it was found.',
  notYetChanged: 'Nothing that was changed is on the record.',
  fileSaysNothing: 'A unit file does not say what was changed.',
  complaint: (text: string) => `Complaint: ${text}`,
  cameBack: (text: string, at: string) => `Came back ${at}: ${text}`,
  answered: (found: string, done: string | undefined, face: string | undefined) =>
    `Found${face === undefined ? '' : ` at ${face}`}: ${found}${done === undefined ? '' : `; done: ${done}`}`,
  opened: (count: number) => `${counted(count, 'sign', 'signs')} that it was opened before`,
  cannotStay: (face: string, holes: string[]) =>
    `${face}: the bolts found in ${holesWords(holes)} cannot be right there, by their sizes`,
  figureOutside: (name: string, value: string, limit: string) => `${name}: ${value} before teardown, limit ${limit}`,
  partBad: (part: string, condition: string) => `${part}: ${condition}`,
  boltBad: (face: string, hole: string, condition: string) => `Bolt of ${face}, hole ${hole}: ${condition}`,
  resistance: (face: string, hole: string, feel: string) => `Resistance at ${face}, hole ${hole}: ${feel}`,
  otherBolt: (face: string, moves: string[]) => `${face}: ${moves.join('; ')}`,
  move: (hole: string, from: string, to: string) => `hole ${hole} now ${to}, was ${from}`,
  none: 'no bolt',
  replacedBy: (part: string, by: string) => `${part}: replaced by ${by}`,
  writtenOff: (part: string, reason: string) => `${part}: does not go back (${reason})`,
  fit: (place: string, part: string) => `${place}: ${part}`,
  bolts: (count: number, kind: string, what: 'written off' | 'added', reason: string) =>
    `${counted(count, 'bolt')} ${kind} ${what}${reason === '' ? '' : ` (${reason})`}`,

  proof: {
    summary: 'What is proven and what is not; what is not stands in bold.',
    question: 'What is asked',
    answer: 'What the record says',
    bolts: 'Bolts with their final pass',
    ofBolts: (final: number, bolts: number) => `${final} of ${bolts}`,
    band: 'Torques in their band',
    notInBand: (out: number, feel: number, noWant: number) =>
      [
        ...(out > 0 ? [`${out} outside`] : []),
        ...(feel > 0 ? [`${feel} by feel, without a torque`] : []),
        ...(noWant > 0 ? [`${noWant} without a torque to hold it against`] : []),
      ].join(', '),
    calibration: 'Wrenches in calibration on the day',
    notCalibrated: (out: number, unknown: number) =>
      [
        ...(out > 0 ? [`${counted(out, 'bolt')} with a wrench out of calibration`] : []),
        ...(unknown > 0 ? [`${counted(unknown, 'bolt')} with a wrench of which nobody has said it`] : []),
      ].join(', '),
    figures: 'Figures inside their limit',
    ofFigures: (inside: number, figures: number, waived: number) =>
      `${inside} of ${figures}${waived === 0 ? '' : `, ${waived} waived by name`}`,
    noFigures: 'no limit was entered',
    parts: 'Parts that came out, accounted for',
    ofParts: (done: number, all: number) => `${done} of ${all}`,
    noParts: 'none was entered',
    clocks: 'Working times (sealant, soaking, warm parts)',
    kept: 'kept',
    running: (what: string[]) => `still runs: ${what.join(', ')}`,
    late: (what: string[]) => `over: ${what.join(', ')}`,
    stops: 'Stops that were passed',
    noStops: 'none',
    passed: (answered: number, silent: number) =>
      [
        ...(answered > 0 ? [`${answered}, each answered for by name`] : []),
        ...(silent > 0 ? [`${silent} in silence: nobody answered for ${silent === 1 ? 'it' : 'them'}`] : []),
      ].join('; '),
    checked: 'Checked by a second person',
    onlyPerson: 'no: the shop is one person',
    notChecked: 'no: nobody has signed as checker after the last work',
    open: 'Things open',
    nothingOpen: 'none',
    release: 'Release',
    fits: 'fits the entries, by their hash',
    fitsNot: 'does NOT fit the entries',
    noRelease: 'none',
  },

  qrAlt: (text: string) => `QR code: ${text}`,
  scan: 'Checks this record against the shop’s own:',
  entries: (count: number) => `${counted(count, 'entry', 'entries')}, hash`,
  fileHash: 'Hash of the unit file',

  open: (count: number) => `Open: ${counted(count, 'thing')}`,
  since: 'Entered after the release',
  sinceSummary: 'Entries that the release does not cover.',

  face: {
    marks: (face: string, changed: boolean) =>
      `${face} with its holes.${changed ? ' Black marks: another bolt went in than was found there.' : ''}`,
    photographAlt: (face: string, holes: string[]) =>
      `Photograph of ${face} with ${holesWords(holes)} marked. The tables below say the same in words.`,
    noPhotograph: 'There is no photograph of this face.',
    photographAbsent: 'The photograph of this face is not in the archive.',
    photographUnreadable: 'The photograph of this face cannot be shown.',
    now: (from: string, to: string) => `${from} → ${to}`,
    built: 'As found, as built',
    builtSummary: 'One row for each hole: the bolt that was found, the one that went in, and what the sizes say.',
    foundSummary: 'One row for each hole: the bolt that was found, and what the sizes say.',
    hole: 'Hole',
    found: 'As found',
    placed: 'As built',
    change: 'Change',
    belongs: 'By its sizes',
    torques: 'Tightened',
    torquesSummary: 'One row for each hole: its passes, its final torque, with what and by whom.',
    wanted: 'Wanted',
    before: 'Passes before',
    final: 'Final',
    wrench: 'With',
    who: 'By, UTC',
    order: (name: string | undefined, passes: number) =>
      `Order: ${name ?? 'as stated for the face'}, ${counted(passes, 'pass', 'passes')}`,
    sequence: (share: number, holes: string[]) => `${Math.round(share * 100)} %: ${holes.join(' ')}`,
    closed: (who: string, at: string) => `Closed by ${who}, ${at}.`,
    notClosed: 'Not closed.',
    released: (who: string, at: string) => `Released by ${who}, ${at}.`,
    moved: 'CHANGED',
    same: 'same',
    unknown: '–',
    notKnown: 'not known',
    notPlaced: 'NOT PLACED',
    notTightened: 'NOT TIGHTENED',
    byFeel: 'by feel',
    outOfBand: 'OUT OF BAND',
    outOfCalibration: 'OUT OF CALIBRATION',
    until: (day: string) => `calibrated until ${day}`,
    witness: 'witness mark',
    turns: (turns: number, seated: boolean) => `${turns} turns, ${seated ? 'seated' : 'stopped before the seat'}`,
    only: 'only this one fits',
    fits: (may: string[]) => `fits: ${may.join(', ')}`,
    doesNot: (may: string[]) => (may.length === 0 ? 'NO BOLT FITS' : `DOES NOT BELONG; fits: ${may.join(', ')}`),
    contradicted: 'readings contradict each other',
  },

  figures: {
    heading: 'Figures before and after',
    summary: 'Figures, each with its limit and where that stands, before teardown and at the end.',
    name: 'Figure',
    before: 'Before',
    after: 'After',
    limit: 'Limit',
    verdict: 'Verdict',
    during: (value: string) => `${value} (during)`,
    earlier: (value: string, day: string) => `before it was opened again: ${value}, ${day}`,
    verdicts: {
      'no limit': 'no limit entered',
      inside: 'inside',
      outside: 'OUTSIDE',
      'not taken': 'NOT TAKEN',
      'before opening': 'NOT TAKEN SINCE IT WAS OPENED AGAIN',
      'other unit': 'in another unit than its limit',
      waived: 'waived',
    } satisfies Record<BuiltFigure['verdict'], string>,
    waived: (who: string, reason: string) => `WAIVED by ${who}: ${reason}`,
    atLeast: (least: number, unit: string) => `at least ${least} ${unit}`,
    atMost: (most: number, unit: string) => `at most ${most} ${unit}`,
    between: (least: number, most: number, unit: string) => `${least} to ${most} ${unit}`,
  },

  readings: {
    heading: 'Readings',
    summary: 'Each reading with its uncertainty and its instrument.',
    what: 'Reading',
    of: (quantity: string, place: string) => `${quantity}, ${place}`,
    value: 'Value',
    instrument: 'Instrument',
    who: 'By, UTC',
    replaced: 'read again later',
    repeated: (times: number) => `read ${times} times`,
  },

  wrenches: {
    heading: 'Wrenches',
    summary: 'Tools that bolts were tightened with.',
    tool: 'Tool',
    number: 'Number',
    until: 'Calibrated until',
    bolts: 'Bolts finished',
    notSaid: 'not said',
    out: (day: string) => `${day}: OUT on the day of use`,
  },

  parts: {
    heading: 'Parts',
    summary: 'Every part that came out and what became of it.',
    part: 'Part',
    where: 'Where, which way round',
    condition: 'Condition',
    fate: 'What became of it',
    fates: { out: 'OUT', in: 'in again', replaced: 'replaced', 'written off': 'does not go back' } satisfies Record<
      BuiltPart['fate'],
      string
    >,
    bolts: 'Bolts of the tray',
    plugs: 'Plugs',
    plugsSummary: 'Each plug with the socket that it was found in and the one it is in now.',
    plug: 'Plug',
    found: 'Found in',
    placed: 'Is in',
    wires: 'Tag, wires',
    notIn: 'NOT IN',
    fits: 'Selective parts',
  },

  stops: {
    heading: 'Stops that were passed',
    summary: 'Where Gripbook said stop and somebody went on.',
    what: 'What was done',
    stop: 'What the stop said',
    who: 'Who answered for it, and why',
    silent: 'NOBODY: passed in silence',
    said: 'A person went on before anything was passed',
    gates: {
      'hand-start': 'all are started by hand first',
      'pass before': 'the round before comes first',
      'closing step': 'nothing unfinished is closed in',
      resistance: 'resistance is looked at first',
      'torque out of band': 'torque in its band',
      'bolt does not belong': 'bolt belongs in the hole',
      calibration: 'wrench in calibration',
      release: 'nothing is open at the release',
    } satisfies Record<StopName, string>,
  },

  resistances: {
    heading: 'Resistance',
    summary: 'Resistance that hands felt, and what it was.',
    where: 'Where',
    felt: 'What was felt',
    found: 'What it was',
    stands: 'STANDS: nobody has said what it was',
    after: (feel: string, turns: number) => `${feel}, after ${turns} turns`,
  },

  clocks: {
    heading: 'Clocks',
    summary: 'Sealant, soaking and warm parts.',
    what: 'Clock',
    set: 'Set to',
    ran: 'Ran',
    minutes: (minutes: number) => `${Math.round(minutes * 10) / 10} min`,
    over: (minutes: number) => `OVER by ${Math.round(minutes * 10) / 10} min`,
    runs: 'still runs',
  },

  notes: {
    heading: 'Decisions and notes',
    summary: 'What was decided and noted.',
    what: 'Decision or note',
    where: 'Where',
    who: 'By, UTC',
    because: (text: string, reason: string) => `${text}. Because: ${reason}`,
    decided: (text: string) => `Decided: ${text}`,
  },
  signs: 'Signs that it was opened before',
  photographs: 'Further photographs',
  photographAlt: (caption: string) => `Photograph: ${caption}`,
  photographOf: (where: string) => `of ${where}`,
  absent: (count: number) =>
    `${counted(count, 'photograph')} that entries speak of ${count === 1 ? 'is' : 'are'} not here or cannot be shown.`,

  undone: 'Taken back',
  undoneSummary: 'Entries that no longer count. They stay on the record.',
  undoneBy: (who: string, at: string, reason: string | undefined) =>
    `by ${who}, ${at}${reason === undefined ? '' : `: ${reason}`}`,
  takenBack: 'Taken back by, why',

  clashes: 'Contradictions that nobody has settled',
  clash: (place: string, field: string) => `${place}: ${field}`,
  notUnderstood: 'Entries that this Gripbook does not understand',

  cautions: 'Cautions',
  cautionsFirst: 'Local rules and the judgement of a licensed professional come first.',
  caution: {
    battery: 'Battery: the earth lead comes off first and goes on last, before any plug of the unit is touched.',
    lifting:
      'A unit is heavier than it looks. Above 23 kg (51 lb, the limit of the NIOSH lifting equation under ideal conditions) use a hoist, a sling or a fixture; never work under a load that hangs on a jack alone.',
    springs:
      'Springs and snap rings hold force until they fly. Press them with a tool made for it, stand aside, wear glasses.',
    solvents:
      'Solvents, brake cleaner and hot oil: a ventilated place, gloves and goggles, no flame, no hot metal near them.',
    'compressed air':
      'Compressed air for cleaning stays below 30 psi (207 kPa), with guards against flying chips and glasses on (29 CFR 1910.242(b)); never towards people or clothes.',
    sealant: 'Sealant has a working time. A cover that was joined after it may leak later, however it looks today.',
    'over-tightened':
      'A bolt that was tightened too far may hold today and break later. One that was out of its band is looked at again when the unit is next opened.',
    'road test':
      'A road test only where it is allowed, by somebody who may drive there; with a second person when figures are read.',
  } satisfies Record<Caution, string>,

  signatures: {
    heading: 'Signatures',
    summary: 'Who signed, as what, and when.',
    as: 'As',
    who: 'Name',
    what: 'What was signed',
    at: 'When, UTC',
    roles: { builder: 'builder', checker: 'checker' } satisfies Record<BuiltSignature['as'], string>,
    release: 'release',
    theUnit: 'the unit',
    before: 'and hands were on it afterwards',
    onlyPerson: 'The shop is one person: who built it released it, and nobody else has checked it.',
    none: 'Nobody has signed.',
    byHand: (role: string) => `${role}, by hand`,
  },

  check: {
    heading: 'How to check this record',
    lines: (made: string) => [
      'gripbook check FILE on this PDF or on the archive beside it says whether a single byte of it was changed, and where.',
      `The archive holds every entry that this paper was made from, in open formats. ${made}`,
      'Entries are made on the devices of the people named and are never changed: what is wrong is taken back by a further entry.',
      'Times are those of the devices, in UTC.',
    ],
    ofFile: [
      'gripbook check FILE says whether a single byte of this PDF was changed, and where.',
      'The hash is that of the unit file as Gripbook writes it. Nobody has signed for what is in it.',
    ],
    signedWith: (key: string) => `The shop signs with the key ${key}.`,
    notSigned: 'No shop has signed this file.',
    releaseHash: (record: string) => `Released were the entries with the hash ${record}.`,
    unit: (id: string) => `Unit ${id}.`,
  },
  rules: 'The service manual rules; what Gripbook computes is a check on it.',
}

export function holesWords(holes: readonly string[]): string {
  const runs = runsOf(holes).map(({ from, to }) => (from === to ? from : `${from} to ${to}`))
  return `${holes.length === 1 ? 'hole' : 'holes'} ${runs.join(', ')}`
}
