import type { Assumption, OrderKind, TighteningProgress } from '@gripbook/engine'
import type { FaultPlace } from '../../tightening/draft.ts'
import type { Area } from '../../tightening/drawn.ts'
import type { BedName, Material, Surface } from '../../tightening/materials.ts'
import { holes } from './holes.ts'

const LANG = 'en'
const and = new Intl.ListFormat(LANG, { type: 'conjunction' })
const figure = (digits: number) => new Intl.NumberFormat(LANG, { maximumSignificantDigits: digits })
const two = figure(2)
const three = figure(3)
const newton = new Intl.NumberFormat(LANG, { maximumFractionDigits: 0 })
const oneAfter = new Intl.NumberFormat(LANG, { minimumFractionDigits: 1, maximumFractionDigits: 1 })

const percent = (share: number) => {
  const value = share * 100
  return `${value < 10 && value > 0 ? oneAfter.format(value) : newton.format(value)} %`
}
const wholePercent = (share: number) => `${Number((share * 100).toFixed(1))} %`
const load = (value: number) =>
  Math.abs(value) < 1000 ? `${newton.format(value)} N` : `${oneAfter.format(value / 1000)} kN`
/** mm in the unit of the page: thousandths of either, no finer than the model is worth. */
const small = (millimetres: number, unit: string) =>
  unit === 'in' ? `${(millimetres / 25.4).toFixed(4)} in` : `${millimetres.toFixed(3)} mm`
const far = (millimetres: number, unit: string) =>
  unit === 'in' ? `${two.format(millimetres / 25.4)} in` : `${newton.format(millimetres)} mm`

const orders: Record<OrderKind, string> = {
  stated: 'The manual’s order',
  cross: 'Crosswise',
  spiral: 'From the middle outward',
  rails: 'From the middle of the long sides',
  corners: 'Corners first',
  round: 'Round the edge',
  found: 'Found by search',
}

const orderHow: Record<OrderKind, string> = {
  stated: 'As it was entered.',
  cross: 'Opposite bolts, halving the angle each time (ASME PCC-1).',
  spiral: 'In a spiral, paired across the middle.',
  rails: 'Crossing over from one long side to the other, towards the ends.',
  corners: 'The corners crosswise, then what lies between.',
  round: 'One neighbour after the other.',
  found: 'Tried out over the whole range of what lies in the joint.',
}

const PLACES: Record<FaultPlace, string> = {
  outline: 'the outline',
  openings: 'an opening',
  hollows: 'a hollow',
  regions: 'a part of another thickness',
  lines: 'a valve line',
  thickness: 'the thickness',
  young: 'the modulus',
  poisson: 'Poisson’s ratio',
  bed: 'what lies in the joint',
  stiffness: 'its stiffness',
  clamp: 'the clamp',
  boltStiffness: 'the bolt’s stiffness',
  passes: 'the manual’s order',
  holes: 'a hole',
}

export const tightening = {
  title: 'Tightening',
  needsHoles: 'Mark the holes first',
  needsHolesWhat: 'An order needs at least two holes. Tap them on the face.',
  needsScale: 'How large is the face?',
  needsScaleWhat:
    'The sums need millimetres. Tap two points on the picture whose distance you know; after that everything drawn here is in millimetres.',

  // Setting up.
  setUp: 'The cover',
  setUpWhat: 'Draw the cover once. Then the page works out what each bolt still holds after every turn of the wrench.',
  outline: 'Outline of the cover',
  fromMarks: 'Take it from the marks',
  fromMarksWhat: (margin: string) =>
    `Straight from bolt to bolt round the outermost ones, with ${margin} beyond their middle: one and a half of the bolt’s size (common practice, no source). Drag the corners where the cover is different.`,
  drawOutline: 'Tap its corners',
  editOutline: 'Change the corners',
  outlineIs: (corners: number, wide: string, high: string) => `${corners} corners, ${wide} × ${high}`,
  thickness: 'Thickness of the cover',
  thicknessThin: (millimetres: number, text: string) =>
    `That is ${Number(millimetres.toFixed(3))} mm. Inches are written with their unit: ${text} in.`,
  thicknessHint: 'Where it is thinnest over most of its area; thicker parts can be drawn.',
  material: 'Made of',
  materials: {
    aluminium: 'Aluminium',
    magnesium: 'Magnesium',
    steel: 'Steel',
    'grey iron': 'Grey iron',
    own: 'Own figures',
  } satisfies Record<Material | 'own', string>,
  elastic: (young: number, poisson: number) => `E ${newton.format(young)} MPa, ν ${poisson}`,
  young: 'Modulus of elasticity E',
  poisson: 'Poisson’s ratio ν',
  bed: 'What lies in the joint',
  beds: {
    'cork-rubber': 'Cork-rubber gasket',
    paper: 'Paper gasket',
    'fibre sheet': 'Fibre sheet gasket',
    metal: 'Sealant film or metal on metal',
    own: 'Own figure',
  } satisfies Record<BedName | 'own', string>,
  bedRange: (from: number, to: number, thickness: number | undefined) =>
    thickness === undefined
      ? `${newton.format(from)} to ${newton.format(to)} N/mm³: common practice, no source.`
      : `${three.format(from)} to ${three.format(to)} N/mm³ at ${thickness} mm, from gasket specifications. Half as thick is twice as stiff.`,
  stiffness: 'Stiffness of the joint',
  stiffnessHint: 'One figure, or a range such as 2 to 6.',
  more: 'Openings, hollows, valve lines, manual’s order, clamp',
  draw: 'More to draw',
  areaWhat: {
    openings: 'A hole through the cover that is larger than a bolt’s.',
    hollows: 'Where nothing lies under the cover: a passage, the open middle of a pan.',
    regions: 'A rib, a boss, a thin wall.',
    lines: 'Two taps: the cover must stay straight from one to the other.',
  } satisfies Record<Area, string>,
  areaAdd: {
    openings: 'Draw an opening',
    hollows: 'Draw a hollow',
    regions: 'Draw a thicker part',
    lines: 'Draw a valve line',
  } satisfies Record<Area, string>,
  areaNumber: (area: Area, index: number) => {
    const short: Record<Area, string> = { openings: 'Opening', hollows: 'Hollow', regions: 'Part', lines: 'Line' }
    return `${short[area]} ${index + 1}`
  },
  editArea: (name: string) => `Change the corners of ${name}`,
  removeArea: (name: string) => `Remove ${name}`,
  areaThickness: (name: string) => `Thickness of ${name}`,
  lineName: (name: string) => `What ${name} is`,
  lineNameHint: 'Regulator valve, upper edge …',
  corners: (count: number) => (count === 1 ? '1 corner' : `${count} corners`),
  ends: (count: number) =>
    count === 0 ? 'Tap the first end.' : count === 1 ? 'Now the other end.' : 'Both ends are set.',
  snug: 'All bolts are run down by hand before the first pass',
  snugHint: 'It changes which order is best.',
  clamp: 'Clamp of every bolt',
  clampHint: (torque: boolean) =>
    torque ? 'Empty: from the torque, at middling friction.' : 'Empty: from the usual torque of the size.',
  boltStiffness: 'Stiffness of a bolt',
  boltStiffnessHint: 'Empty: from its size and grip.',
  surface: 'How rough are the surfaces? They settle after tightening.',
  surfaces: {
    fine: 'Fine (Rz below 10 µm)',
    usual: 'Usual (10 to 40 µm)',
    rough: 'Rough (above 40 µm)',
  } satisfies Record<Surface, string>,
  surfaceNone: 'Not counted',
  order: 'Order from the manual',
  orderWhat: 'The manual’s order rules. It is worked out first, and the others stand beside it.',
  orderTap: 'Tap the holes in their order, or type them.',
  passShare: (number: number) => `Pass ${number}: share of the torque`,
  passHoles: (number: number) => `Pass ${number}: holes in their order`,
  passTap: (number: number) => `Tap the holes of pass ${number}`,
  passTapped: (done: number, all: number) => `${done} of ${all} holes`,
  turnOf: (hole: string, turn: number) => `Hole ${hole}, turn ${turn}`,
  passAdd: 'One more pass',
  passFirst: 'Enter the manual’s order',
  passRemove: (number: number) => `Remove pass ${number}`,
  workOut: 'Work out the order',
  keepChanges: 'Keep and work it out',
  kept: 'The cover is kept.',
  notYet: (places: readonly FaultPlace[]) => `Still to do: ${and.format(places.map((place) => PLACES[place]))}.`,

  // Drawing.
  drawTitle: {
    outline: 'Tap the corners of the cover',
    openings: 'Tap the corners of the opening',
    hollows: 'Tap the corners of the hollow',
    regions: 'Tap the corners of the part',
    lines: 'Tap both ends',
  } satisfies Record<Area | 'outline', string>,
  drawOpen: 'One after the other, round the rim. Tap the first one again, or Done, to close it.',
  drawClosed: 'Drag a corner to move it. A tap beside a side puts a corner into it; a tap on a corner picks it.',
  drawLine: 'Drag an end to move it.',
  corner: (number: number, count: number) => `Corner ${number} of ${count}`,
  cornersMarks: 'Corners',
  cornerInMiddle: 'Set a corner in the middle of the picture',
  removeCorner: 'Remove this corner',
  undoCorner: 'Undo',
  startAgain: 'Draw anew',
  drawDone: 'Done',
  tooFew: (least: number) => `At least ${least} corners: tap on, or draw anew to leave it out.`,
  picked: (number: number) => `Corner ${number} is picked.`,

  draftFaults: {
    'no corners': 'Not drawn yet.',
    'no figure': 'A figure above zero.',
    'no bed': 'Choose what lies in the joint.',
    'no poisson': 'From 0 to below 0.5.',
    'no range': 'One figure above zero, or a range with the smaller one first.',
    'no load': 'A load above zero, such as 8000 or 8 kN.',
    'no share': 'Above 0, up to 100 %.',
    'share falls': 'No smaller than the pass before.',
    'no name': 'Name it: the answer speaks of it.',
    'name twice': 'This name is there already.',
    'no holes': 'Tap or type the holes.',
  },
  unknownHole: (name: string) => `There is no hole “${name}” on this face.`,
  faultAtHole: (hole: string, fault: string) => `Hole ${hole}: ${fault.charAt(0).toLowerCase()}${fault.slice(1)}`,
  holeTwice: (hole: string) => `Hole ${hole} comes twice in this pass.`,

  // Answer.
  tabsLabel: 'What is shown',
  tabs: { order: 'Order', steps: 'Steps', compare: 'Compare' },
  orders,
  orderHow,
  advice: {
    stated: 'The manual’s order rules.',
    pattern: (name: string) => `${name}: nothing that was searched for is truly better.`,
    patternOnly: (name: string) => `${name}: the best of the patterns that one can remember.`,
    found: (spread: string, name: string, other: string) =>
      `The order that was searched for: it leaves ${spread} of spread where “${name}” leaves ${other}.`,
  },
  statedBeside: (name: string, spread: string, stated: string) =>
    `By these sums “${name}” would leave ${spread} of spread, the manual’s order ${stated}. The manual knows what the sums do not.`,
  sequence: (names: readonly string[]) => names.join(' → '),
  sequenceSaid: (names: readonly string[]) => `Holes in their order: ${names.join(', ')}`,
  marksAre: 'On the picture: large the turn, small the hole.',
  inPasses: (shares: readonly number[]) =>
    shares.length === 1
      ? `In one pass at ${wholePercent(shares[0]!)} of the torque.`
      : `In ${shares.length} passes, at ${and.format(shares.map(wholePercent))} of the torque.`,
  inVisits: (visits: number, shares: readonly number[]) =>
    `In ${visits} visits, each ${shares.length === 1 ? 'in one pass' : `in ${shares.length} passes`} at ${and.format(shares.map(wholePercent))} of the torque.`,
  inVisit: (visit: number, shares: readonly number[]) => `Visit ${visit} at ${and.format(shares.map(wholePercent))}.`,
  visitLine: (visit: number, shares: readonly number[]) => `Visit ${visit}: ${shares.map(wholePercent).join(', ')}`,
  passLine: (number: number, share: number) => `Pass ${number}, ${wholePercent(share)}`,
  lastRounds: (count: number, still: boolean) =>
    still
      ? `Then round at full torque until no bolt moves: ${count === 1 ? '1 round' : `${count} rounds`} by these sums.`
      : `Then round at full torque: after ${count} rounds bolts still move by these sums.`,
  use: 'Use this order',
  using: 'In use',
  used: (name: string) => `“${name}” is the order of this face.`,
  chosenBefore: (name: string, when: string) => `In use since ${when}: ${name}.`,
  chosenOther: 'It is none of those below: what it was worked out from has changed.',
  theOrders: 'Orders',
  advised: 'Advised',
  spreadWhat: 'Spread: greatest less least clamp at the end, as a share of their mean. Less is better.',
  spreadShort: 'spread after the passes',
  roundsShort: 'after the last rounds',
  bowShort: 'bow',
  afterPasses: 'Spread after the passes',
  afterRounds: 'Spread after the last rounds',
  overBed: 'Spread, soft to stiff joint',
  settled: 'Spread when settled',
  rounds: 'Last rounds',
  roundsCount: (count: number, still: boolean) => (still ? String(count) : `more than ${count}`),
  bow: 'Bow of the cover',
  bowOf: (name: string) => `Bow along ${name}`,
  travel: 'Way of the hand',
  passesTitle: 'How many passes?',
  wanted: 'Spread wanted',
  passesFor: (passes: number, rounds: number, spread: string) =>
    rounds === 0
      ? `${passes === 1 ? 'One pass is' : `${passes} passes are`} enough: ${spread} is left.`
      : `${passes === 1 ? 'One pass' : `${passes} passes`} and ${rounds === 1 ? '1 round' : `up to ${rounds} rounds`} at full torque: ${spread} is left.`,
  passesNever: (spread: string) =>
    `Not with this order: ${spread} is left even when no bolt moves any more. A wrench cannot loosen what is above its target.`,
  sharesTitle: 'Passes that are worked out',
  sharesManual: 'For all but the manual’s order.',
  shareList: (shares: readonly number[]) => shares.map(wholePercent).join(' · '),

  // Step by step.
  stepOf: (pass: number, passes: number, turn: number, turns: number) =>
    `Pass ${pass} of ${passes}, turn ${turn} of ${turns}`,
  stepWhat: (hole: string, share: number) => `Hole ${hole} to ${wholePercent(share)}`,
  clicked: 'The wrench clicks at once: it holds its share already.',
  went: (lost: readonly string[]) => `Slack now: ${holes(lost)}.`,
  back: 'Back',
  next: 'Next',
  step: 'Step',
  stepText: (step: number, steps: number) => `Step ${step} of ${steps}`,
  loadsTitle: 'What each bolt holds',
  loadsTarget: (target: string) => `What each bolt holds. The line is the target, ${target}.`,
  loadsTargets: 'What each bolt holds. The line is its target.',
  bar: (hole: string, load: string, target: string, change: string, turn: string) =>
    [`Hole ${hole} holds ${load} of ${target}`, change, turn].filter((part) => part !== '').join(', '),
  rose: (by: string) => `up by ${by}`,
  fell: (by: string) => `down by ${by}`,
  changeShort: (change: number) => (change === 0 ? '' : `${change > 0 ? '▲' : '▼'} ${load(Math.abs(change))}`),
  turns: {
    now: 'turned now',
    done: 'turned in this pass',
    'to come': 'not turned in this pass yet',
    'other visit': 'in another visit',
  },
  slack: 'slack',
  markNow: (hole: string, turn: number, turns: number, load: string) =>
    `Hole ${hole}, turn ${turn} of ${turns}, holds ${load}`,
  markOther: (hole: string, load: string) => `Hole ${hole}, not in this pass, holds ${load}`,
  mapShow: 'Pressure and gaps',
  mapHide: 'Photograph',
  mapLabel: 'On the picture',
  mapTitle: 'Pressure in the joint, MPa',
  mapBand: (from: number, to: number) => `${three.format(from)} to ${three.format(to)}`,
  mapTop: (from: number) => `above ${three.format(from)}`,
  mapGap: (most: string) => `Hatched: the cover stands off, by up to ${most}`,
  mapBow: (line: string, bow: string) => `Bow along ${line} at this step: ${bow}`,
  mapNoGap: 'It lies on everywhere.',
  mapGreatest: (pressure: number) => `Greatest: ${three.format(pressure)} MPa`,
  mapWorking: 'The map is being worked out…',
  mapFailed: 'The map could not be worked out.',

  // Compare.
  compareLeft: 'First order',
  compareRight: 'Second order',
  compareFigures: 'Side by side',
  compareLoads: 'What the bolts hold at the end',
  compareOne: 'There is only one order to show.',
  better: 'better',

  // Working.
  working: {
    plate: 'Working out how the cover gives…',
    orders: 'Tightening by the known orders…',
    search: 'Searching for a better order…',
  } satisfies Record<TighteningProgress['what'], string>,
  starting: 'The sums are starting…',
  progress: 'How far it is',
  stop: 'Stop',
  stopped: 'Stopped. What was worked out until then is shown.',
  stoppedEarly: 'Stopped before there was an answer.',
  again: 'Go on searching',
  startAgainSums: 'Work it out',
  failed: (why: string) => `The sum failed (${why}). What you entered is kept.`,
  cannot: 'It cannot be worked out yet',
  toCover: 'Change the cover',
  cover: 'Cover',

  firstTitle: 'Before the first pass',
  first: [
    'Hand-start every bolt; dowels and the bolts that locate come first.',
    'Run all of them down until the heads touch.',
    'Then the passes, each one complete before the next begins.',
  ],
  firstFrom: 'Common practice, no source; what the manual says goes first.',

  assumptionsTitle: 'What these figures are',
  assumption: (one: Assumption, unit: string): string => {
    switch (one.what) {
      case 'estimate':
        return 'An estimate that ranks orders: the cover is counted as a plate. It promises no kilonewtons. The manual’s order, passes and torque go first.'
      case 'flat':
        return 'The cover is taken as flat, with no sealant trapped under it. Real ones are not, and that is why shops work from the middle outward.'
      case 'aluminium':
        return 'The material was not stated: counted as aluminium.'
      case 'thickness':
        return 'A thickness of the cover is stated as a range: the middle of it is taken.'
      case 'bolt stiffness':
        return `Stiffness of the bolts from their size and grip (${holes(one.holes)}).`
      case 'torque':
        return `Clamp from the torque at middling friction (${holes(one.holes)}).`
      case 'usual torque':
        return `Neither clamp nor torque is stated: the usual torque of the size (${holes(one.holes)}). Look the manual’s up.`
      case 'unit load':
        return 'No thread, torque or clamp is known: every bolt is counted with 1000 N.'
      case 'thick':
        return `The cover is thick and the joint stiff: a push reaches no farther than ${far(one.bendingLength, unit)}. Bolts hardly feel each other, and plate sums say little here.`
      case 'left out':
        return `The manual’s order as entered never comes to ${holes(one.holes)}. Look the order up again: what it leaves out stays loose in its figures.`
      case 'lift-off':
        return `The cover lifts off in places. The loads count that; it changes one of them by up to ${percent(one.share)}.`
    }
  },
  accuracy: (error: number, grid: number, unit: string) =>
    `Grid of ${far(grid, unit)}; the sink under a bolt is right to about ${percent(error)} of the greatest.`,
  rough: 'No finer grid can be computed for such a cover: take the figures as a hint.',
  sameFriction:
    'Friction is taken as the same in all bolts. Clean threads and the same oil on all of them make it so; one dry thread among them can move its load more than any order does.',
  bedRangeOf: (soft: number, stiff: number) =>
    soft === stiff
      ? `Joint: ${three.format(soft)} N/mm³.`
      : `Joint: ${three.format(soft)} to ${three.format(stiff)} N/mm³; loads are shown for the middle of it.`,

  load,
  percent,
  small,
  far,
}
