/** From the form of a job to what is written: only what was changed, so that the rest stays what Gripbook knows of itself. */
import type { Job } from '@gripbook/engine'
import type { FoldedUnit } from '@gripbook/record'

type Form = { name?: string; minutes?: number; after: string[] }

export function jobChange(was: Job | undefined, form: Form): Partial<Form> {
  const changed = (Object.keys(form) as (keyof Form)[]).filter(
    (field) => JSON.stringify(form[field]) !== JSON.stringify(was?.[field] ?? (field === 'after' ? [] : undefined)),
  )
  return Object.fromEntries(changed.map((field) => [field, form[field]]))
}

/** "job 1", "job 2" …: never one that was used before, also by a job whose entries were undone. */
export function nextJobId({ entries }: Pick<FoldedUnit, 'entries'>, jobs: readonly Job[]): string {
  const used = new Set<unknown>([...jobs.map(({ id }) => id), ...entries.map(({ body }) => body.job)])
  for (let number = 1; ; number++) if (!used.has(`job ${number}`)) return `job ${number}`
}
