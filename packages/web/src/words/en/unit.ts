import type { FaceStanding } from '../../unit/faceStanding.ts'
import type { FirstStep } from '../../unit/firstSteps.ts'
import { spaced } from '../spaced.ts'

const counted = (count: number, one: string, many: string) => (count === 1 ? `1 ${one}` : `${count} ${many}`)

const FIELDS: Record<string, string> = {
  there: 'whether it is there at all',
  asFound: 'what came out of it',
  placed: 'what goes back into it',
  mark: 'where it lies on the photograph',
  at: 'where it lies',
  thread: 'its thread',
  photograph: 'its photograph',
  orderChosen: 'the order of its tightening',
  resistance: 'whether something binds there',
  closed: 'whether it is closed',
  released: 'whether it is released',
  cameBack: 'why it came back',
  fate: 'what became of it',
  replacedBy: 'what it was replaced by',
  running: 'whether it runs',
  done: 'whether it is done',
  waived: 'why it is waived',
  'plug socket': 'which socket it was in',
  'plug placed': 'which socket it went into',
  'step hand-started': 'whether it is started by hand',
  'step run-down': 'whether it is run down',
  'step snug': 'whether it is snug',
  'step turns': 'its turns until the head seated',
  'step final': 'its final torque',
  'step witness mark': 'whether it is marked',
}

/** `what`: the thing that has the field. */
const fieldOf = (field: string, what: string | undefined) =>
  FIELDS[`${what} ${field}`] ??
  FIELDS[field] ??
  (field.startsWith('step pass ') ? `its torque in pass ${field.slice(10)}` : spaced(field))

const steps: Record<FirstStep, { title: string; what: string }> = {
  swap: { title: 'Open the control block', what: 'Which two bolts are swapped? The sentence on top says it.' },
  why: { title: 'Open hole 4 and ask why', what: 'The section shows where the bolt that sat there meets its end.' },
  measure: { title: 'Measure hole 11', what: 'Type 20.9: one reading settles two holes.' },
  doubt: { title: 'Bell housing, hole 8', what: 'Nothing fits. Which reading is to be doubted?' },
  tray: { title: 'Lay the tray beside it', what: 'The bolts drawn to one scale, and what is left over.' },
}

export const unit = {
  noName: 'Unit without a name',
  aUnit: 'Unit',
  nothingKnown: 'Nothing more was noted yet.',
  change: 'Change',
  about: 'What it is',
  model: 'Model',
  job: 'Job',
  complaint: 'Complaint',
  history: 'Opened before',
  histories: { 'never opened': 'Never', unknown: 'Not known', 'opened before': 'Yes' },
  note: 'Note',
  released: 'The unit is released.',
  sinceRelease: (count: number) =>
    `${counted(count, 'entry was', 'entries were')} added since it was released: see the story.`,
  further: 'More of this unit',
  parts: 'Parts',
  partsCount: (count: number) => (count === 0 ? 'None noted yet' : counted(count, 'part', 'parts')),
  figures: 'Figures',
  figuresCount: (count: number) =>
    count === 0 ? 'End play, coils … before and after' : `${counted(count, 'figure', 'figures')}, before and after`,
  finish: 'Before release',
  finishWhat: (released: boolean) => (released ? 'Released; it came back?' : 'What is open, signatures, release'),
  story: 'Story',
  storyCount: (count: number) => counted(count, 'entry', 'entries'),

  faces: 'Faces',
  addFace: 'Add a face',
  noFaces: 'No face yet',
  noFacesWhat:
    'A face is one bolted joint: a cover or body on its seat. Add one, photograph it, and tap its holes on the photograph.',
  standing: ({ holes, unmarked, kinds, grips, asFound }: FaceStanding): string =>
    holes === 0
      ? 'No hole marked yet'
      : [
          counted(holes, 'hole', 'holes'),
          kinds === 0 ? 'nothing in the tray' : counted(kinds, 'kind in the tray', 'kinds in the tray'),
          grips === 0 ? 'no grip read' : `${grips} of ${holes} grips read`,
          ...(asFound > 0 && asFound < holes ? [`${asFound} of ${holes} noted as found`] : []),
          ...(unmarked > 0 ? [`${unmarked} not on the photograph`] : []),
        ].join(' · '),
  closed: 'Closed',
  faceReleased: 'Released',
  changeFace: (face: string) => `Change what is known of ${face}`,

  photographs: 'Photographs',
  noPhotographs: 'None yet. What sat where shows on them later.',
  photographNumber: (number: number, caption: string | null) => caption ?? `Photograph ${number}`,
  allPhotographs: (count: number) => `Show all ${count}`,
  photographKept: 'The photograph is kept with the unit.',

  editTitle: 'What is known of the unit',
  kept: 'Changed.',
  name: 'What is it?',
  nameMissing: 'It needs a name: by it you find it again.',

  faceTitleNew: 'Add a face',
  faceTitle: 'What is known of the face',
  faceName: 'What is it called?',
  faceNameHint: 'Pump cover, control block on the case, bell housing …',
  faceNameMissing: 'Give it a name.',
  torque: 'Torque from the manual',
  torqueHint: 'The manual rules. Left empty while you do not have it.',
  material: 'The threads are cut in',
  materialUnknown: 'unknown',
  gasket: 'Gasket, clamped',
  engagement: 'Least engagement',
  engagementHint: 'From the manual. Left empty Gripbook takes what is usual for the material.',
  faceHistory: 'Was this face opened before?',
  asUnit: 'As the unit',
  more: 'Gasket, engagement, history',
  faceAdded: (name: string) => `${name} is added.`,
  keep: 'Keep',
  add: 'Add the face',
  strikeOut: 'Strike out this face',
  strikeOutWhat:
    'For a face that is none, or that was entered twice. It stays on the record and can be brought back under Story.',
  reason: 'Why? (may stay empty)',
  struckOut: (name: string) => `${name} is struck out.`,

  clashes: 'Two devices say different things',
  clashesWhat: 'Neither knew of the other. Until one of them is chosen, Gripbook reckons with both.',
  clashAt: (where: string, field: string, what?: string) => `${where}: ${fieldOf(field, what)}`,
  theUnit: 'The unit',
  clashFace: (face: string) => face,
  clashHole: (hole: string, face: string) => `Hole ${hole} of ${face}`,
  clashKind: (kind: string, face: string | null) => (face === null ? kind : `${kind} of ${face}`),
  clashThing: (what: string, id: string) => `${what.charAt(0).toUpperCase()}${what.slice(1)} ${id}`,
  said: {
    unknown: 'not known',
    there: 'it is there',
    'struck out': 'struck out',
    photograph: 'another photograph',
    'backed out': 'backed out',
    'by feel': 'by feel',
    done: 'done',
    released: 'released',
    'not released': 'not released',
    empty: 'none',
    yes: 'yes',
    no: 'no',
  },
  saidBy: (who: string, when: string) => `${who}, ${when}`,
  holds: 'This holds',
  holdsLabel: (value: string) => `${value}: this holds`,
  noneHolds: 'None of them holds',
  settled: 'Settled.',

  handOn: 'Hand on as a file',
  handOnWhat:
    'The unit file holds faces, holes, bolts and readings as text. Another Gripbook takes it in, and the command checks it.',
  download: 'Download the unit file',
  archive: 'Download the archive',
  archiveWhat: 'The archive comes from the shop and holds everything: every entry with its proof, and all photographs.',
  nothingYet: 'There is no unit file yet: no face has a hole with a thread.',
  leftOut: 'Left out, since a unit file cannot hold it:',
  leftOutNoHoles: (face: string) => `The face ${face}: it has no hole yet.`,
  leftOutOther: (face: string | null, what: string) =>
    `${face === null ? '' : `${face}: `}${what}. It points to something that was struck out, or does not go together with the rest.`,
  leftOutMore: 'Photographs, parts, notes and the story are not in it either; the archive has them.',

  steps: 'Five things to try',
  stepsWhat: 'The unit is invented, and so are its faults. Try what you like: nothing here is sent.',
  step: steps,
  stepDone: 'Done:',
  stepsAllDone: 'That is what Gripbook does. Take in a unit of your own.',
  toUnits: 'To the units',
  closeSteps: 'Close the list',
  showSteps: 'Five things to try',
  afresh: 'Start the practice unit afresh',
  afreshBusy: 'Laying it on the bench…',
  afreshDone: 'A fresh practice unit lies on the bench.',
}
