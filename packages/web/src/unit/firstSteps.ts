/** The five things that show on the practice unit what the page does, each with the very place where it is. */
import type { FoldedUnit } from '@gripbook/record'
import type { Route } from '../app/route.ts'

export const FIRST_STEPS = ['swap', 'why', 'measure', 'doubt', 'tray'] as const
export type FirstStep = (typeof FIRST_STEPS)[number]

/** Under which it is remembered that a step was done, and that the list was closed. */
export const seenStep = (step: FirstStep) => `practice ${step}`
export const CLOSED = 'practice steps closed'

export function isPracticeMark(seen: string): boolean {
  return seen.startsWith('practice ')
}

export function placeOf(step: FirstStep, unit: string): Route {
  const block = { book: 'practice', unit, face: 'control-block' } as const
  switch (step) {
    case 'swap':
      return { at: 'face', ...block }
    case 'why':
      return { at: 'face', ...block, hole: '4' }
    case 'measure':
      return { at: 'readings', ...block, of: 'grip 11' }
    case 'doubt':
      return { at: 'face', ...block, face: 'bell-housing', hole: '8' }
    case 'tray':
      return { at: 'tray', ...block }
  }
}

/** Measuring is done when the grip is there; the others when their place was opened. */
export function stepDone(step: FirstStep, seen: readonly string[], { unit }: FoldedUnit): boolean {
  if (step !== 'measure') return seen.includes(seenStep(step))
  const block = unit.faces.find(({ id }) => id === 'control-block')
  return block?.holes.find(({ id }) => id === '11')?.grip !== undefined
}
