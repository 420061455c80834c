/** The order of work and the parts that go back, out of what the record holds, in the shape of the unit file. */
import type { Job, UnitPart } from '@gripbook/engine'
import type { Json } from './events/json.ts'
import type { FoldedUnit, Standing } from './unit.ts'
import { jobFields } from './unitFile/jobSchema.ts'

type Things = FoldedUnit['things']

/** Every job that was planned or done. */
export function jobsIn(jobs: Things['job']): Job[] {
  return Object.entries(jobs).map(([id, fields]): Job => {
    const stated = Object.keys(jobFields).flatMap((name) => given(name, fields[name]))
    return { id, ...Object.fromEntries(stated), ...(fields.done?.value === true ? { done: true } : {}) }
  })
}

/** Parts that go back: a part that was written off does not, and one that was replaced is in. */
export function partsIn(parts: Things['part']): UnitPart[] {
  return Object.entries(parts)
    .filter(([, { fate }]) => fate?.value !== 'written off')
    .map(([id, fields]): UnitPart => {
      const fate = fields.fate?.value
      return {
        id,
        what: (fields.what?.value ?? 'other') as UnitPart['what'],
        ...Object.fromEntries(['name', 'face', 'hole'].flatMap((name) => given(name, fields[name]))),
        ...(fate === 'in' || fate === 'replaced' ? { in: true } : {}),
      }
    })
}

const given = (name: string, standing: Standing | undefined): [string, Json][] =>
  standing === undefined || standing.value === null ? [] : [[name, standing.value]]
