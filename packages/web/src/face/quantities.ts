import type { Hole } from '@gripbook/engine'

/** What is measured at a hole, the usual first. */
export const READINGS = [
  'grip',
  'bottomDepth',
  'threadDepth',
  'mouth',
  'bracket',
  'gasket',
  'behind',
] as const satisfies readonly (keyof Hole)[]
