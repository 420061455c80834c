/** Limits of size of threads. */
import type { PublishedTable } from './table.ts'

/** Limits of bolts, 6g. */
export const bolt6g: PublishedTable = {
  source: 'ISO 965-2 and ASME B1.13M limits, on thread charts of two suppliers',
  table: '6g external thread',
  basis: 'seen',
  unit: 'mm',
  columns: ['thread', 'limit', 'value'],
  rows: [
    ['M4', 'major max', '3.978'],
    ['M4', 'major min', '3.838'],
    ['M4', 'pitch max', '3.523'],
    ['M4', 'pitch min', '3.433'],
    ['M4', 'minor max', '3.220'],
    ['M4', 'minor min', '3.002'],
    ['M5', 'major max', '4.976'],
    ['M5', 'major min', '4.826'],
    ['M5', 'pitch max', '4.456'],
    ['M5', 'pitch min', '4.361'],
    ['M5', 'minor max', '4.110'],
    ['M5', 'minor min', '3.868'],
    ['M6', 'major max', '5.974'],
    ['M6', 'major min', '5.794'],
    ['M6', 'pitch max', '5.324'],
    ['M6', 'pitch min', '5.212'],
    ['M6', 'minor max', '4.891'],
    ['M6', 'minor min', '4.596'],
    ['M8', 'major max', '7.972'],
    ['M8', 'major min', '7.760'],
    ['M8', 'pitch max', '7.160'],
    ['M8', 'pitch min', '7.042'],
    ['M8', 'minor max', '6.619'],
    ['M8', 'minor min', '6.272'],
    ['M10', 'major max', '9.968'],
    ['M10', 'major min', '9.732'],
    ['M10', 'pitch max', '8.994'],
    ['M10', 'pitch min', '8.862'],
    ['M10', 'minor max', '8.344'],
    ['M10', 'minor min', '7.938'],
    ['M10x1', 'major max', '9.974'],
    ['M10x1', 'major min', '9.794'],
    ['M10x1', 'pitch max', '9.324'],
    ['M10x1', 'pitch min', '9.212'],
    ['M10x1', 'minor max', '8.891'],
    ['M10x1', 'minor min', '8.596'],
  ],
}

/** Limits of M12 bolts, 6g: two decimals seen, the third recalled. M16 recalled, confirmed by its strip area. */
export const bolt6gRecalled: PublishedTable = {
  source: 'ISO 965-2',
  table: '6g external thread',
  basis: 'from memory',
  unit: 'mm',
  columns: ['thread', 'limit', 'value'],
  rows: [
    ['M12', 'major max', '11.966'],
    ['M12', 'major min', '11.701'],
    ['M12', 'pitch max', '10.829'],
    ['M12', 'pitch min', '10.679'],
    ['M12', 'minor max', '10.072'],
    ['M12', 'minor min', '9.601'],
    ['M16', 'major min', '15.682'],
    ['M16', 'pitch min', '14.503'],
  ],
}

/** Limits of holes, 6H. */
export const hole6H: PublishedTable = {
  source:
    'ISO 965-2 and ASME B1.13M limits: tap catalogue for pitch diameters, internal thread table for minor diameters',
  table: '6H internal thread',
  basis: 'seen',
  unit: 'mm',
  columns: ['thread', 'limit', 'value'],
  rows: [
    ['M5', 'pitch min', '4.480'],
    ['M5', 'pitch max', '4.605'],
    ['M6', 'pitch min', '5.350'],
    ['M6', 'pitch max', '5.500'],
    ['M8', 'pitch min', '7.188'],
    ['M8', 'pitch max', '7.348'],
    ['M10', 'pitch min', '9.026'],
    ['M10', 'pitch max', '9.206'],
    ['M12', 'pitch min', '10.863'],
    ['M12', 'pitch max', '11.063'],
    ['M14', 'pitch min', '12.701'],
    ['M14', 'pitch max', '12.913'],
    ['M16', 'pitch min', '14.701'],
    ['M16', 'pitch max', '14.913'],
    ['M10', 'minor max', '8.676'],
    ['M12', 'minor max', '10.441'],
    ['M14', 'minor max', '12.210'],
    ['M10x1.25', 'pitch min', '9.188'],
    ['M10x1.25', 'pitch max', '9.348'],
    ['M10x1.25', 'minor max', '8.912'],
    ['M10x1', 'pitch min', '9.350'],
    ['M10x1', 'pitch max', '9.500'],
    ['M10x1', 'minor max', '9.153'],
    ['M12x1.5', 'pitch min', '11.026'],
    ['M12x1.5', 'pitch max', '11.216'],
    ['M12x1.5', 'minor max', '10.676'],
    ['M4', 'pitch min', '3.545'],
    ['M4', 'pitch max', '3.663'],
  ],
}

/** Minor diameters of holes, 6H, recalled and confirmed by reproducing the printed strip areas. */
export const hole6HRecalled: PublishedTable = {
  source: 'ISO 965-2',
  table: '6H internal thread',
  basis: 'from memory',
  unit: 'mm',
  columns: ['thread', 'limit', 'value'],
  rows: [
    ['M5', 'minor max', '4.334'],
    ['M6', 'minor max', '5.153'],
    ['M8', 'minor max', '6.912'],
    ['M16', 'minor max', '14.210'],
  ],
}

/** Limits of unified holes, 2B. */
export const hole2B: PublishedTable = {
  source: 'ASME B1.1, a table of inch thread limits',
  table: '2B internal thread',
  basis: 'seen',
  unit: 'in',
  columns: ['thread', 'limit', 'value'],
  rows: [
    ['1/4-20', 'pitch min', '0.2175'],
    ['1/4-20', 'pitch max', '0.2224'],
    ['1/4-20', 'minor max', '0.207'],
    ['3/8-16', 'pitch min', '0.3344'],
    ['3/8-16', 'pitch max', '0.3401'],
    ['3/8-16', 'minor max', '0.321'],
    ['7/16-14', 'pitch min', '0.3911'],
    ['7/16-14', 'pitch max', '0.3972'],
    ['7/16-14', 'minor max', '0.376'],
  ],
}
