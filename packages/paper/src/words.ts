/** Every sentence that stands on paper. */
export const words = {
  page: (page: number, of: number) => `Page ${page} of ${of}`,
  lettersLacked:
    'A box stands for a letter that this document’s font does not hold; copied or read out, the letter is there.',

  asFound: 'as found',
  foundEmpty: 'found empty',
  notKnown: 'bolt not known',
  noBoltFits: (found: boolean) => (found ? 'as found; no bolt of the tray fits' : 'no bolt of the tray fits'),
  open: (may: string[], found: boolean) => `${found ? 'as found; ' : ''}open: ${may.join(' or ')}`,
  placeNotKnown: 'place not known',

  board: {
    /** What follows the name of the face. */
    title: (sheet: string | undefined, isComputed: boolean) =>
      `: ${isComputed ? 'bolt board' : 'bolts as found'}${sheet === undefined ? '' : `, sheet ${sheet}`}`,
    scale: {
      true: 'True scale.',
      estimated:
        'NOT TO SCALE: the scale is only estimated from the photograph. Measure between two holes before you trust it.',
      none: 'NOT TO SCALE: the places are those of the photograph, its scale is not known. The bolts are true to their size.',
      row: 'NOT TO SCALE: the places of the holes are not known, they stand in the order of the list.',
    },
    shows: 'Each hole with the bolt that belongs in it; dashed is a bolt as found, where it is open which one belongs.',
    boltScale: (name: string) => `Bolts beside the holes ${name}.`,
    noBolts: 'The bolts are drawn after the list of holes.',
    bar: 'Print at actual size (100 %), not fitted to the page: this bar must measure 100 mm.',
    barNotToScale:
      'Print at actual size (100 %): if this bar measures 100 mm, rings and bolts are true. The places of the holes are not.',
    barAlt: 'A bar to check the printer with: 100 mm long when printed at actual size.',
    join: 'Cut one sheet along the dashed line, lay its crosses over those of the next and tape.',
    joins: (sheet: string) => `joins ${sheet}`,
    figure: (face: string, sheet: string | undefined, holes: string[]) =>
      `The face ${face}${sheet === undefined ? '' : `, sheet ${sheet}`}, with ${holes.length === 0 ? 'no hole' : `the holes ${holes.join(', ')}`} and the bolt of each beside it. The list of holes says the same in words.`,
    plan: (sheet: string, columns: number, rows: number) =>
      `Where sheet ${sheet} lies: ${columns} across, ${rows} down.`,
    list: (face: string) => `${face}: holes and bolts`,
    columns: { hole: 'Hole', bolt: 'Bolt', as: 'Shown as', why: 'Why' },
    listSummary: 'One row for each hole: its bolt, why it is shown and the reason.',
    belongs: 'belongs',
    trueSize: 'The bolts at true size',
    layOn: 'Lay a bolt on its outline to tell it from the others.',
    bolt: (name: string, holes: string[]) =>
      `${name}${holes.length === 0 ? '' : `: ${holes.length === 1 ? 'hole' : 'holes'} ${holes.join(', ')}`}`,
    boltAlt: (name: string) => `Side view of ${name} at true size.`,
    lengthNotKnown: 'length not known',
    cutOff: 'longer than the sheet',
  },

  learner: {
    title: (face: string) => `${face}: which bolt goes where, and why?`,
    name: 'Name',
    date: 'Date',
    drawn: (scale: string) => `The face, drawn ${scale}.`,
    notToScale: 'not to scale',
    figure: (face: string, holes: string[]) =>
      `The face ${face} with its holes ${holes.join(', ')}, each with its number.`,
    tray: 'The bolts on the bench',
    pieces: (count: number) => (count === 1 ? '1 piece' : `${count} pieces`),
    trayAlt: (bolts: string[]) => `Side views of the bolts, to one scale: ${bolts.join('; ')}.`,
    read: 'Read there, mm:',
    readings: {
      grip: 'grip',
      bracket: 'bracket',
      threadDepth: 'thread depth',
      bottomDepth: 'bottom depth',
    },
    nothingRead: 'Nothing was read there.',
    how: 'Stick-out is the length of the bolt less all that it clamps. Enough of its thread must be in the thread of the hole, and neither its tip nor the end of its full thread may run out of room.',
    questions: 'Questions',
    which: (hole: string) => `Which bolt goes in hole ${hole}, and why?`,
    stay: (hole: string, found: string) =>
      `Hole ${hole} came apart with ${found} in it. Can that go back there? Which bolt belongs, and why?`,
    could: (hole: string) => `Which bolts could go in hole ${hole}? What would you measure to be sure?`,
    matter: (hole: string) => `What is the matter with hole ${hole}?`,
    answers: (face: string) => `${face}: the answers`,
    all: 'All holes',
    belongs: (bolt: string) => `${bolt} belongs there.`,
    belongsAsIt: (bolt: string, why: string) => `${bolt} belongs there; it ${why}.`,
    sure: 'The readings alone settle it.',
    trayCounts: 'The readings alone do not settle it: what else is on the bench counts too.',
    other: (bolt: string, why: string) => `${bolt}: ${why}.`,
    spared: (bolt: string) => `${bolt} would fit too, but another hole needs it.`,
    mightFit: (bolt: string) => `${bolt} might fit too, but then another hole would go without its bolt.`,
    couldBe: (bolts: string) => `${bolts}: the readings leave it open.`,
    next: (why: string) => `Next: ${why}.`,
    nothing: 'Nothing of the tray can be said to belong there.',
  },

  rules: 'The service manual rules; what Gripbook computes is a check on it.',
}
