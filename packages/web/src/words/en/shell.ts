import type { Route } from '../../app/route.ts'

const PLACES: Record<Route['at'], string> = {
  units: 'the units',
  'take-in': 'taking in',
  settings: 'the settings',
  unit: 'the unit',
  story: 'the story',
  parts: 'the parts',
  finish: 'before release',
  figures: 'the figures',
  face: 'the face',
  tray: 'the tray',
  readings: 'the readings',
  tightening: 'the tightening',
  bench: 'the bench',
}

export const shell = {
  opening: 'Gripbook is opening…',
  backTo: (place: Route['at']) => `Back to ${PLACES[place]}`,
  close: 'Close',
  undo: 'Undo',
  isUndone: 'Undone. It stays on the record as undone.',
  cancel: 'Cancel',
  keep: 'Keep',
  later: 'Later',
  practice: 'Practice',
  tryAgain: 'Try again',
  partAway: 'This part of the page has not come yet.',
  update: 'A newer Gripbook',
  updateReady: 'A newer Gripbook is here. What you have entered stays as it is.',
  updateNow: 'Take it now',
  cannotOpen: 'Gripbook cannot keep anything here',
  cannotOpenWhat:
    'A private window or a setting of the browser can be the cause. Open the page in a usual window, or allow it to store data. Nothing that was kept before is lost.',
  failed: (why: string) => `That did not work: ${why}. Nothing was changed.`,
  notHere: 'This is not on this device',
  notHereWhat: 'With signal and a paired device it comes from the shop by itself.',
}
