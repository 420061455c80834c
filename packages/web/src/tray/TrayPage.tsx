/** The bolts that lie on the bench for a face: what is missing and left over, the tray to one scale, the kinds with their counts. */
import type { Face } from '@gripbook/engine'
import type { FoldedUnit } from '@gripbook/record'
import { useMemo, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import type { Route } from '../app/route.ts'
import { Shell } from '../app/Shell.tsx'
import { useUnit } from '../app/useUnit.ts'
import { namesOf } from '../face/kindNames.ts'
import { Icon, type IconName } from '../look/icons.tsx'
import { Caution } from '../parts/Caution.tsx'
import { kindsOf } from '../readings/quantities.ts'
import { words } from '../words/index.ts'
import { type FaceNow, useAnswer } from '../workers/useAnswer.ts'
import { AddKind } from './AddKind.tsx'
import { EditKind } from './EditKind.tsx'
import { KindList, type Laid } from './KindList.tsx'
import { type TrayLine, trayLines } from './said.ts'
import { TrayDrawing } from './TrayDrawing.tsx'
import './TrayPage.css'

type Props = Extract<Route, { at: 'tray' }>

export function TrayPage({ unit, face: id }: Props) {
  const folded = useUnit(unit)
  const now = useAnswer(folded, id)
  if (folded === null) return <p class="starting">{words.shell.opening}</p>
  const face = folded.unit.faces.find((one) => one.id === id)
  if (face === undefined) return <Shell title={words.shell.notHere}>{words.shell.notHereWhat}</Shell>
  return <OpenTray folded={folded} face={face} now={now} />
}

function OpenTray({ folded, face, now }: { folded: FoldedUnit; face: Face; now: FaceNow }) {
  const { route } = useApp()
  const [open, setOpen] = useState<'add' | Laid | null>(null)
  const kinds = useMemo(() => kindsOf(folded.unit, face), [folded.unit, face])
  const names = useMemo(() => namesOf(kinds.map(({ kind }) => kind)).long, [kinds])
  const named = (kind: string) => names.get(kind) ?? kind
  const faceName = (which: string) => {
    const one = folded.unit.faces.find(({ id }) => id === which)
    return one?.name ?? which
  }
  const title = faceName(face.id)
  const bolts = kinds.reduce((sum, { kind }) => sum + (kind.count ?? 0), 0)
  const add = (
    <button type="button" class="button button--act button--wide" onClick={() => setOpen('add')}>
      <Icon name="plus" />
      {words.tray.add}
    </button>
  )
  return (
    <Shell title={words.tray.title} over={title}>
      <div class="tray">
        <section class="tray__said" aria-live="polite">
          {kinds.length > 0 && <Said now={now} named={named} faceName={faceName} />}
          {kinds.length > 0 && (
            <figure class="tray__drawing" aria-label={words.tray.drawn}>
              <TrayDrawing
                unit={folded.unit}
                face={now.face ?? face}
                answer={now.answer}
                title={words.tray.drawing(title)}
              />
            </figure>
          )}
        </section>
        <section class="tray__kinds">
          {kinds.length === 0 ? (
            <div class="empty">
              <h2>{words.tray.emptyTitle}</h2>
              <p>{words.tray.emptyWhat}</p>
            </div>
          ) : (
            <>
              <div class="tray__title">
                <h2>{words.tray.kinds}</h2>
                <p class="quiet">{words.tray.kindsCount(kinds.length, bolts)}</p>
              </div>
              <KindList unit={folded.id} face={face.id} kinds={kinds} named={named} onOpen={setOpen} />
            </>
          )}
          <Caution name="stretched" words={words.tray.stretched} seen={words.tray.stretchedSeen} />
          <div class="tray__foot">{add}</div>
        </section>
      </div>
      {open === 'add' && route.at === 'tray' && (
        <AddKind folded={folded} face={face} named={named} onClose={() => setOpen(null)} />
      )}
      {open !== null && open !== 'add' && (
        <EditKind
          key={open.kind.id}
          id={folded.id}
          unit={folded.unit}
          face={face.id}
          laid={open}
          name={named(open.kind.id)}
          onClose={() => setOpen(null)}
        />
      )}
    </Shell>
  )
}

const ICONS: Record<TrayLine['is'], IconName> = { wanted: 'plus', 'left over': 'tray', short: 'minus', all: 'tick' }

type SaidProps = { now: FaceNow; named: (kind: string) => string; faceName: (face: string) => string }

/** What the answer says of the tray. */
function Said({ now: { answer, working, fault }, named, faceName }: SaidProps) {
  if (fault !== null) return <p class="quiet">{words.verdict.failed}</p>
  if (answer === null) return <p class="quiet">{working ? words.verdict.working : words.tray.noAnswer}</p>
  const say = (line: TrayLine): string => {
    switch (line.is) {
      case 'wanted':
        return words.tray.wanted(line.thread, line.lengths, line.holes)
      case 'left over':
        return words.tray.leftOver(line.count, named(line.kind), line.fits.map(faceName))
      case 'short':
        return words.tray.short(line.count)
      case 'all':
        return words.tray.all(line.holes)
    }
  }
  return (
    <ul class="tray__lines">
      {trayLines(answer).map((line) => (
        <li key={say(line)} class={`tray__line tray__line--${line.is.replace(' ', '-')}`}>
          <Icon name={ICONS[line.is]} />
          <span dir="auto">{say(line)}</span>
        </li>
      ))}
    </ul>
  )
}
