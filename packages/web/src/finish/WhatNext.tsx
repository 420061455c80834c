/** What next: the order of work, as far as the record has not ticked it off; the user adds jobs, changes them and leaves them out. */
import { type FoldedUnit, jobDone, partWentIn } from '@gripbook/record'
import { useMemo, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Go } from '../units/Go.tsx'
import { words } from '../words/finish.ts'
import { JobSheet } from './JobSheet.tsx'
import { useTick } from './useTick.ts'
import { type JobLine, placeOfJob, type Work, workOf } from './whatNext.ts'
import './WhatNext.css'

/** So many are shown at first. */
const SHOWN = 4

export function WhatNext({ folded }: { folded: FoldedUnit }) {
  const work = useMemo(() => workOf(folded), [folded])
  const [all, setAll] = useState(false)
  const [open, setOpen] = useState<'new' | { job: string } | null>(null)
  if (work === null) return null
  const { next, clashes, done } = work
  const shown = all ? next : next.slice(0, SHOWN)
  return (
    <section class="stack stack--tight">
      <div class="next__head">
        <h2>{words.nextTitle}</h2>
        <span class="quiet">{words.nextCount(done, work.all)}</span>
      </div>
      {clashes.length > 0 && <Clash work={work} />}
      {next.length === 0 && clashes.length === 0 ? (
        <p class="sign sign--fits">
          <Icon name="tick" />
          {words.nextNone}
        </p>
      ) : (
        <ol class="card lines next">
          {shown.map((job, i) => (
            <li key={job.id}>
              <JobRow job={job} first={i === 0} folded={folded} onChange={() => setOpen({ job: job.id })} />
            </li>
          ))}
        </ol>
      )}
      <div class="buttons">
        {next.length > SHOWN && (
          <button type="button" class="button button--plain" aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? words.nextFewer : words.nextAll(next.length)}
          </button>
        )}
        <button type="button" class="button button--plain" onClick={() => setOpen('new')}>
          <Icon name="plus" />
          {words.addJob}
        </button>
      </div>
      <p class="quiet">{words.nextWhat}</p>
      {open !== null && (
        <JobSheet
          folded={folded}
          jobs={work.jobs}
          {...(open === 'new' ? {} : { job: open.job })}
          onClose={() => setOpen(null)}
        />
      )}
    </section>
  )
}

type RowProps = { job: JobLine; first: boolean; folded: FoldedUnit; onChange: () => void }

function JobRow({ job, first, folded, onChange }: RowProps) {
  const { book } = useApp()
  const tickOff = useTick(folded)
  const to = placeOfJob(job, { book: book.name, unit: folded.id })
  const by = job.doneBy

  function tick() {
    if (by === 'bench') return
    const happening = by === 'hand' ? jobDone({ job: job.id, name: job.name }) : partWentIn({ part: by.part })
    tickOff(happening, words.jobDone(job.name))
  }

  const about = (
    <span class="next__words">
      <span class={first ? 'next__first' : undefined} dir="auto">
        {job.name}
      </span>
      <span class="quiet" dir="auto">
        {[...(job.minutes === null ? [] : [words.minutes(Math.max(1, Math.round(job.minutes)))]), ...job.tools].join(
          ' · ',
        )}
      </span>
      {job.notReady.length > 0 && (
        <span class="sign sign--may next__lacks" dir="auto">
          <Icon name="question" size={18} />
          {words.notReady(job.notReady)}
        </span>
      )}
    </span>
  )
  return (
    <div class="next__job">
      {by === 'bench' ? (
        <span class="next__space" aria-hidden="true" />
      ) : (
        <button type="button" class="next__tick" aria-label={words.tickJob(job.name)} onClick={tick}>
          <Icon name="tick" />
        </button>
      )}
      {to === null ? (
        about
      ) : (
        <Go to={to} class="next__link">
          {about}
          <Icon name="forth" size={20} />
        </Go>
      )}
      <button type="button" class="next__change" aria-label={words.changeJob(job.name)} onClick={onChange}>
        <Icon name="more" />
      </button>
    </div>
  )
}

function Clash({ work }: { work: Work }) {
  const name = (id: string) => work.jobs.find((job) => job.id === id)?.name ?? id
  const clash = work.clashes[0]!
  const said =
    clash.what === 'circle'
      ? words.circle(clash.reasons.map(({ earlier }) => name(earlier)))
      : clash.what === 'window'
        ? words.windowTooShort(name(clash.opens), Math.round(clash.takes), clash.lasts)
        : words.closedOver(name(clash.job), clash.unfinished.map(name))
  return (
    <p class="caution">
      <Icon name="warning" />
      <span dir="auto">{said}</span>
    </p>
  )
}
