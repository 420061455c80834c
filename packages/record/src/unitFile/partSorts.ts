/** What comes out beside bolts. */
export const PART_SORTS = [
  'bracket',
  'clip',
  'connector',
  'wire',
  'seal',
  'gasket',
  'check ball',
  'spring',
  'shim',
  'ring',
  'plate',
  'filter',
  'other',
] as const
