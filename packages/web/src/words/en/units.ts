const and = new Intl.ListFormat('en', { type: 'conjunction' })

const counted = (count: number, one: string, many: string) => (count === 1 ? `1 ${one}` : `${count} ${many}`)

export const units = {
  title: 'Gripbook',
  search: 'Search',
  searchHint: 'Name, model, job or complaint',
  list: 'Units',
  takeIn: 'Take in a unit',
  settings: 'Settings',
  more: 'More',
  noName: 'Unit without a name',
  job: (job: string) => `Job ${job}`,
  faces: (count: number) => (count === 0 ? 'No face yet' : counted(count, 'face', 'faces')),
  released: 'Released',
  back: 'It came back',
  inShop: 'In the shop',
  waits: 'Still to be sent',
  last: (when: string) => `Last worked on ${when}`,
  reading: 'Reading the units…',
  foundNone: (query: string) => `No unit holds “${query}”.`,
  foundNoneMore: 'The shop may have older ones: show more below.',
  clearSearch: 'Show all',
  showMore: 'Show more',
  showingMore: 'Asking the shop…',
  shopAway: 'The shop does not answer. What is on this device is all here.',

  firstTitle: 'No unit here yet',
  firstWhat:
    'Gripbook keeps what came apart and works out which bolt belongs in which hole, and why. It works on this device, also without signal.',
  firstHow: 'The practice unit shows it in five minutes: nothing done there is ever sent or counts.',

  practice: 'Practice unit',
  practiceWhat: 'The gearbox of a yard loader that someone else has had apart. Nothing done there is ever sent.',
  practiceOpen: 'Open the practice unit',
  practiceMaking: 'Laying it on the bench…',
  practiceFailed: (why: string) =>
    `The practice unit could not be opened (${why}). Its pictures come with the first visit that has signal.`,

  replacedTitle: 'Gripbook was here before',
  replaced:
    'This browser has kept a record before, and it was deleted: by the browser, or by hand under its settings. What had been sent is with the shop and comes back after pairing. What had not been sent is gone.',
  replacedSeen: 'Understood',

  importTitle: 'Take in a unit file',
  importWhat: 'A unit file (.json) that was handed on from another Gripbook comes in as a new unit.',
  importChoose: 'Choose a file',
  importReading: 'Reading…',
  importHolds: (name: string, faces: number, holes: number, kinds: number) =>
    `${name}: ${and.format([counted(faces, 'face', 'faces'), counted(holes, 'hole', 'holes'), counted(kinds, 'bolt kind', 'bolt kinds')])}.`,
  importFaults: (file: string, count: number) =>
    `${file} was not taken in: ${counted(count, 'thing in it is', 'things in it are')} wrong. Nothing was changed.`,
  importDo: 'Take it in as a new unit',
  imported: (name: string) => `${name} is taken in.`,

  takeInTitle: 'Take in a unit',
  name: 'What is it?',
  nameHint: 'As you would say it at the bench: gearbox of the yard loader.',
  nameMissing: 'Give it a name: by it you find it again.',
  model: 'Model',
  jobNumber: 'Job number',
  complaint: 'What is wrong with it, in the customer’s own words',
  history: 'Was it opened before?',
  histories: { 'never opened': 'Never', unknown: 'Not known', 'opened before': 'Opened before' },
  signs: 'Signs that it was opened before',
  signsHint: 'Sealant of two colours, tool marks on the heads, a bolt of another colour.',
  sign: (number: number) => `Sign ${number}`,
  signPhotograph: 'Photograph the sign',
  addSign: 'Add a sign without a photograph',
  seePhotograph: 'See the photograph',
  remove: 'Remove',
  removeSign: (number: number) => `Remove sign ${number}`,
  photographs: 'Photographs of all six sides',
  photographsHint: 'Before anything comes off: what sat where shows on them later.',
  nextShows: 'The next photograph shows',
  otherSide: 'Something else',
  sides: ['Front', 'Back', 'Left', 'Right', 'Top', 'Bottom'],
  caption: (number: number) => `What photograph ${number} shows`,
  removePhotograph: (number: number) => `Remove photograph ${number}`,
  photographNumber: (number: number, caption: string) => (caption === '' ? `Photograph ${number}` : caption),
  takeInDo: 'Take in',
  takenIn: (name: string) => `${name} is taken in.`,
  startOver: 'Start over',
  startedOver: 'The form is empty again.',

  cautionLift:
    'Lifting: one person lifts at most 23 kg (51 lb), and only close to the body and without twisting; less when reaching or lifting often (NIOSH lifting equation). Above that take a hoist and a sling, and a stand that holds the unit by itself; nobody works under a load that hangs or stands on a jack alone. Local rules and a licensed professional’s judgement come first.',
  cautionOil:
    'Hot oil: let the unit cool before a plug or a line is opened, gloves and goggles on (common practice, no source). Local rules and a licensed professional’s judgement come first.',
  cautionSeen: 'I have read it',
}
