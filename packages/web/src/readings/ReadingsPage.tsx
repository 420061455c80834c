/** The measuring station of a face, with how its verdicts stand on top. */
import { useMemo, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import type { Route } from '../app/route.ts'
import { Shell } from '../app/Shell.tsx'
import { useUnit } from '../app/useUnit.ts'
import { namesOf } from '../face/kindNames.ts'
import { countsOf } from '../face/lead.ts'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { words } from '../words/index.ts'
import { useAnswer } from '../workers/useAnswer.ts'
import { MeasureTab } from './MeasureTab.tsx'
import { leadOf, startOf, TABS, type Tab } from './order.ts'
import { kindsOf } from './quantities.ts'
import { RanksTab } from './RanksTab.tsx'
import { TriesTab } from './TriesTab.tsx'
import './station.css'

type Props = Extract<Route, { at: 'readings' }>

export function ReadingsPage(route: Props) {
  const { book, unit, face: id, of } = route
  const { go } = useApp()
  const folded = useUnit(unit)
  const now = useAnswer(folded, id)
  const face = folded?.unit.faces.find((one) => one.id === id) ?? null
  const names = useMemo(
    () => namesOf(folded === null || face === null ? [] : kindsOf(folded.unit, face).map(({ kind }) => kind)).long,
    [folded, face],
  )
  const lead = useMemo(() => leadOf(now.answer?.next ?? null), [now.answer])
  const start = startOf(of, lead)
  const [picked, setPicked] = useState<{ tab: Tab; of: string | undefined } | null>(null)
  const tab = picked !== null && picked.of === of ? picked.tab : start.tab

  if (folded === null) return <p class="starting">{words.shell.opening}</p>
  const named = (kind: string) => names.get(kind) ?? kind
  const here = { book, unit, face: id }
  const over = face === null ? undefined : (face.name ?? face.id)
  const around = { folded, answer: now.answer, named, lead, onTray: () => go({ at: 'tray', ...here }) }

  return (
    <Shell title={words.readings.title} {...(over === undefined ? {} : { over })}>
      <div class="readings">
        {face === null || face.holes.length === 0 ? (
          <div class="column">
            <div class="empty">
              <h2>{words.readings.noHoles}</h2>
              <p>{words.readings.noHolesWhat}</p>
              <button type="button" class="button button--act" onClick={() => go({ at: 'face', ...here })}>
                <Icon name="mark" />
                {words.readings.toFace}
              </button>
            </div>
          </div>
        ) : (
          <>
            <div class="readings__head">
              <Choice
                label={words.readings.tabsLabel}
                quiet
                options={TABS.map((value) => ({ value, words: words.readings.tabs[value] }))}
                value={tab}
                onChoose={(next) => setPicked({ tab: next, of })}
              />
              <Standing now={now} />
            </div>
            {tab === 'measure' && (
              <MeasureTab
                key={of ?? ''}
                {...around}
                face={face}
                start={start}
                onTry={() => setPicked({ tab: 'tries', of })}
              />
            )}
            {tab === 'ranks' && <RanksTab folded={folded} face={face} named={named} />}
            {tab === 'tries' && <TriesTab {...around} face={face} />}
          </>
        )}
      </div>
    </Shell>
  )
}

/** Settled, open, contradicted: by the last answer, and whether the next is under way. */
function Standing({ now: { answer, working, fault } }: { now: ReturnType<typeof useAnswer> }) {
  if (fault !== null) return <p class="readings__standing">{words.verdict.failed}</p>
  const counts = answer === null ? null : countsOf(answer)
  return (
    <p class="readings__standing" role="status">
      {counts !== null && <strong>{words.verdict.counts(counts.settled, counts.open, counts.contradicted)}</strong>}
      {working && <span class="quiet"> {words.verdict.working}</span>}
    </p>
  )
}
