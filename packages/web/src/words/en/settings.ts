import type { DeviceFaultCode } from '@gripbook/device'
import { DEVICE_FAULTS } from '@gripbook/device'
import type { Role } from '../../device/shop.ts'
import type { PairFault } from '../../settings/pairing.ts'

const ROLE: Record<Role, string> = { owner: 'Owner', builder: 'Builder', checker: 'Checker', viewer: 'Viewer' }

const MAY: Record<Role, string> = {
  owner: 'Everything: people, codes and devices too.',
  builder: 'Enters readings, places, torques and photographs.',
  checker: 'What a builder may, and signs off and releases.',
  viewer: 'Reads, and enters nothing.',
}

/** What the shop says no to in the settings; a code of a device's fault has its words already. */
const REFUSED: Record<string, string> = {
  'no-answer': 'The shop does not answer. This needs signal: nothing was changed.',
  'not-allowed': 'Only the owner of the shop may do this.',
  'last-owner': 'The shop needs an owner: make someone else one first.',
  'not-found': 'The shop does not have this any more.',
  'wrong-request': 'The shop does not take this name. Take 1 to 80 letters that can be seen.',
}

export const settings = {
  title: 'Settings',

  // Pairing
  pairTitle: 'Pair this device',
  paired: (name: string) => `Paired as ${name}. What was on this device is on its way to the shop.`,
  pairWhat:
    'Pairing sends what is on this device to the shop and keeps it there, and brings here what the others enter. Everything stays on this device too.',
  pairCode: 'Code',
  pairCodeHint: 'The owner makes one under Settings, or reads it at the shop’s machine. It lives ten minutes.',
  pairName: 'Your name, as it stands under what you enter',
  pairNameHint: 'Needed with the first code of a shop. Later the shop knows it, and the name it knows counts.',
  pairDo: 'Pair this device',
  pairing: 'Pairing…',
  pairFault: (code: PairFault['code'] | 'code-missing'): string => {
    if (code === 'code-missing') return 'Type the code.'
    if (code === 'name-missing') return 'The shop needs your name here: 1 to 80 letters that can be seen.'
    if (code === 'other-browser')
      return 'The shop knows this device with another secret. Delete what this browser keeps of Gripbook, or use another browser.'
    return DEVICE_FAULTS[code]
  },
  codeLength: (found: number, wanted: number) => `A code has ${wanted} letters and digits; this has ${found}.`,

  // Units and look
  units: 'Units',
  length: 'Lengths',
  lengths: { mm: 'mm', in: 'inch' },
  torque: 'Torques',
  torques: { N·m: 'N·m', lbf·ft: 'lbf·ft', lbf·in: 'lbf·in', kgf·m: 'kgf·m' },
  unitsNote: 'What was entered keeps the unit it was entered in.',
  look: 'Look',
  looks: { 'by system': 'As the system', light: 'Light', dark: 'Dark', bright: 'Bright shop' },
  brightNote: 'Bright shop is black on white with thick lines, for sun on the screen.',

  // Gloves and the card
  gloves: 'Gloves',
  gloveMode: 'Keys for gloves',
  off: 'Off',
  on: 'On',
  glovesWhat: 'Every key is 20 mm wide, stop and undo 25 mm.',
  scaleAssumed:
    'How large a millimetre is on this screen is assumed: 96 pixels to the inch. A bank card makes it sure.',
  scaleKnown: (pixels: string) => `Measured with a card: ${pixels} pixels make one millimetre here.`,
  layCard: 'Lay a bank card on it',
  layAgain: 'Lay the card again',
  forgetCard: 'Forget the card',
  keyPreview: 'This key is 20 mm wide. Hold a rule to it.',
  cardTitle: 'Lay a bank card on the screen',
  cardLong: 'Lay it lengthwise on the outline, lower edges together. Then make the outline as wide as the card.',
  cardShort: 'Lay it upright on the outline, lower edges together. Then make the outline as wide as the card.',
  cardSize: 'Any card of that size will do: 85.60 × 53.98 mm (ISO/IEC 7810, ID-1).',
  outlineWidth: 'Width of the outline',
  outlineSays: (mm: string, pixels: number) => `${pixels} pixels for ${mm} mm`,
  narrower: 'Narrower',
  wider: 'Wider',
  cardFits: 'It is as wide as the card',
  cardKept: 'A millimetre is a millimetre now.',

  // Instruments
  instruments: 'Instruments',
  instrumentsWhat: 'The ± goes with every reading and into every verdict.',
  instrumentsSource:
    'The usual figures are common practice, no source: wider than the instrument alone, for feel and burrs (DIN 862 allows a digital caliper 0.02 mm, 0.04 mm for depth). What stands on your own certificate rules: put it in.',
  plusMinus: (value: number, unit: string) => `± ${value} ${unit}`,
  number: (number: string) => `No. ${number}`,
  addInstrument: 'Add an instrument',
  changeInstrument: 'Change the instrument',
  instrumentName: 'Name',
  instrumentNumber: 'Number in the shop, where it has one',
  instrumentRange: (unit: string) => `Range, ${unit} (may stay empty)`,
  instrumentRangeHint: 'From the least to the greatest it reads: 0–150.',
  rangeFault: 'Write the least and the greatest: 0–150.',
  reads: (least: number, most: number, unit: string) => `${least} to ${most} ${unit}`,
  calibratedUntil: 'In calibration until (may stay empty)',
  calibratedUntilHint: 'The last day that its certificate or label names. It goes with every reading.',
  inCalibration: (day: string) => `in calibration until ${day}`,
  calibrationEnded: (day: string) => `its calibration ended on ${day}`,
  instrumentPlusMinus: '± of one reading',
  instrumentPlusMinusHint: 'From its certificate, or half of what it can be read to.',
  nameMissing: 'Give it a name.',
  nameTaken: 'There is one with this name.',
  plusMinusMissing: 'Give a figure above zero.',
  remove: 'Remove',
  usual: 'Back to the usual ones',
  usualWhat: 'Your own list is replaced by the usual instruments. Readings that were taken keep theirs.',
  usualDo: 'Replace the list',

  // This device
  thisDevice: 'This device',
  deviceKind: 'Device',
  deviceId: (id: string) => `begins with ${id}`,
  deviceIdLabel: 'Its id',
  pairedAs: 'Paired as',
  person: (name: string, role: string) => `${name}, ${(ROLE[role as Role] ?? role).toLowerCase()}`,
  notPaired: 'not paired: what is entered stays on this device alone',
  notKnown: 'not known until the shop answers',
  ownName: 'Your name, as it stands under what you enter',
  signOut: 'Sign out',
  signOutTitle: 'Sign out of the shop?',
  signOutStays: 'All that is on this device stays on it and can be read and gone on with.',
  signOutWaits: (count: number) =>
    `${count === 1 ? 'One thing is' : `${count} things are`} not sent yet. It goes on only when the device is paired again.`,
  signOutAfter: 'To send again, this device needs a new code from the owner.',
  signOutAway: 'The shop does not answer. Only the shop can end it: try again with signal.',
  signedOut: 'Signed out. What is on this device stays.',

  // Installing
  installTitle: 'Without signal',
  installed: 'Gripbook is installed here and opens without signal.',
  installOffered: 'Installed, it has its own icon and fills the screen.',
  installDo: 'Put Gripbook on this device',
  installByHand: 'Tap Share in the browser, then Add to Home Screen. It then has its own icon and fills the screen.',
  installNotHere: 'The page itself opens without signal. This browser does not offer to install it here; its menu may.',
  notSecure: 'The page was opened over plain HTTP, so it does not open without signal here.',
  notSecureWhat:
    'Start the shop with gripbook serve --shop and let this device trust it once. What was entered at this address stays at this address: send it first.',
  trustLink: 'How this device comes to trust the shop',

  // The shop
  shop: 'Shop',
  asking: 'Asking the shop…',
  refused: (code: string) =>
    REFUSED[code] ?? DEVICE_FAULTS[code as DeviceFaultCode] ?? `The shop refuses this (${code}). Nothing was changed.`,
  role: (role: Role) => ROLE[role],
  may: (role: Role) => MAY[role],
  roleLabel: 'May',
  newCode: 'Let someone in',
  codeFor: 'Who is it for?',
  forNew: 'Someone new',
  forKnown: 'A further device',
  newName: 'Name',
  whom: 'Whose device',
  makeCode: 'Make a code',
  makingCode: 'Making it…',
  codeTitle: (name: string) => `Code for ${name}`,
  codeHow: 'Point the camera of the new device at this, or type the code there. It can be used once.',
  qrLabel: 'The link as a picture for a camera',
  codeLeft: (left: string) => `Void in ${left}`,
  codeVoid: 'This code is void. Make another.',
  copyLink: 'Copy the link',
  copied: 'The link is copied.',
  notCopied: 'This browser did not let the link be copied. Mark it and copy it by hand.',
  people: 'People',
  you: 'you',
  gone: (when: string) => `left on ${when}`,
  formerIds: (count: number) => `Left, and names from before a pairing (${count})`,
  changePerson: (name: string) => `Change ${name}`,
  hasLeft: 'Has left the shop',
  hasLeftWhat: 'Every device of this person is signed out at once. The name stays under what was entered.',
  isBack: 'Is back in the shop',
  personChanged: (name: string) => `${name} is changed.`,
  personLeft: (name: string) => `${name} has left. Their devices are signed out.`,
  sessions: 'Signed-in devices',
  sessionUsed: (when: string) => `used ${when}`,
  sessionHere: 'this device',
  endSession: 'Sign it out',
  endSessionOf: (device: string, name: string) => `Sign out ${device} of ${name}`,
  sessionEnded: (device: string, name: string) => `${device} of ${name} is signed out.`,
  tryAgain: 'Ask again',

  // About
  about: 'About Gripbook',
  version: (version: string) => `Version ${version}`,
  licence: 'Free under the Apache License 2.0, without warranty.',
  notTheManual:
    'Gripbook does not replace the service manual. A torque, a limit, an order or a clearance from the manual always rules; a figure of Gripbook’s own is a check on it and never permission.',
  localRules: 'Local rules and a licensed professional’s judgement come first.',
}
