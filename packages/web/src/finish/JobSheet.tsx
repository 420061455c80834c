import type { Job } from '@gripbook/engine'
import { type FoldedUnit, jobPlanned } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Field, TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useTyped } from '../parts/useTyped.ts'
import { given, oneLine } from '../units/texts.ts'
import { words } from '../words/finish.ts'
import { jobChange, nextJobId } from './jobChange.ts'

type Props = { folded: FoldedUnit; jobs: readonly Job[] /** None: a new one. */; job?: string; onClose: () => void }

/** A job is added, or what is planned of it changed; the user's word wins over the order that Gripbook knows of itself. */
export function JobSheet({ folded, jobs, job: id, onClose }: Props) {
  const { write } = useApp()
  const was = jobs.find((job) => job.id === id)
  const { typed, type, clear } = useTyped(`job ${folded.id} ${id ?? ''}`, {
    name: was?.name ?? '',
    minutes: was?.minutes === undefined ? '' : String(was.minutes),
  })
  const { name, minutes } = typed
  const [after, setAfter] = useState<readonly string[]>(was?.after ?? [])
  const [tried, setTried] = useState(false)
  const faults = {
    name: oneLine(name) === undefined ? words.jobNameNeeded : '',
    minutes: minutes.trim() === '' || Number(minutes.replace(',', '.')) >= 0 ? '' : words.jobMinutesFault,
  }
  const others = jobs.filter((job) => job.id !== id && job.skip !== true)

  // Of a job that is planned nothing half changed stays behind.
  function leave() {
    if (id !== undefined) clear()
    onClose()
  }

  async function plan(body: Omit<Parameters<typeof jobPlanned>[0], 'job'>, said: string) {
    const at = id ?? nextJobId(folded, jobs)
    if (Object.keys(body).length === 0) return onClose()
    if ((await write(folded.id, [jobPlanned({ job: at, ...body })], said)) === null) return
    clear()
    onClose()
  }

  function keep() {
    setTried(true)
    const said = oneLine(name)
    if (faults.name + faults.minutes !== '' || said === undefined) return
    const time = minutes.trim() === '' ? undefined : Number(minutes.replace(',', '.'))
    const body = jobChange(was, {
      ...given('name', said),
      ...(time === undefined ? {} : { minutes: time }),
      after: [...after],
    })
    void plan(body, words.jobPlanned(said))
  }

  return (
    <Sheet title={was === undefined ? words.addJob : words.changeJobTitle} onClose={leave}>
      <Form onKeep={keep}>
        <TextField
          label={words.jobName}
          value={name}
          fault={tried ? faults.name : ''}
          input={{ maxLength: 200 }}
          onInput={(name) => type({ name })}
        />
        <TextField
          label={words.jobMinutes}
          value={minutes}
          fault={tried ? faults.minutes : ''}
          input={{ inputMode: 'decimal', maxLength: 8 }}
          onInput={(minutes) => type({ minutes })}
        />
        <Field label={words.jobAfter} hint={words.jobAfterHint}>
          {({ id: field, describedBy }) => (
            <select
              id={field}
              class="input"
              value=""
              aria-describedby={describedBy}
              onChange={(event) => {
                const { value } = event.currentTarget
                if (value !== '') setAfter((before) => [...before.filter((one) => one !== value), value])
              }}
            >
              <option value="">{words.jobAfterPick}</option>
              {others
                .filter((job) => !after.includes(job.id))
                .map((job) => (
                  <option key={job.id} value={job.id}>
                    {job.name ?? job.id}
                  </option>
                ))}
            </select>
          )}
        </Field>
        {after.length > 0 && (
          <ul class="lines">
            {after.map((one) => {
              const called = jobs.find((job) => job.id === one)?.name ?? one
              return (
                <li key={one} class="next__job">
                  <span class="next__words" dir="auto">
                    {called}
                  </span>
                  <button
                    type="button"
                    class="button button--plain"
                    aria-label={words.jobNotAfterLabel(called)}
                    onClick={() => setAfter((before) => before.filter((other) => other !== one))}
                  >
                    {words.jobNotAfter}
                  </button>
                </li>
              )
            })}
          </ul>
        )}
        <button type="submit" class="button button--act">
          {words.checkedDo}
        </button>
        {was !== undefined && (
          <button
            type="button"
            class="button button--plain"
            onClick={() => void plan({ skip: true }, words.jobSkipped(was.name ?? was.id))}
          >
            {words.jobSkip}
          </button>
        )}
      </Form>
    </Sheet>
  )
}
