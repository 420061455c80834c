/** Before release: everything that is still open, each with what settles it; then the signatures and the release itself. After it, what came since. */
import { type FoldedUnit, openBefore } from '@gripbook/record'
import { useMemo, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { faultWords } from '../app/faultWords.ts'
import { Shell } from '../app/Shell.tsx'
import { useUnit } from '../app/useUnit.ts'
import { Icon } from '../look/icons.tsx'
import { NotHere } from '../unit/NotHere.tsx'
import { usePeople } from '../unit/usePeople.ts'
import { Foot } from '../units/Foot.tsx'
import { words } from '../words/finish.ts'
import { words as all } from '../words/index.ts'
import { Answers } from './Answers.tsx'
import { BackCard } from './BackCard.tsx'
import { ComeBackSheet } from './ComeBackSheet.tsx'
import { comeBacksNow } from './comeBack.ts'
import { InstrumentsUsed } from './InstrumentsUsed.tsx'
import { groupsOf } from './lines.ts'
import { OpenLine } from './OpenLine.tsx'
import { RecordPaper } from './RecordPaper.tsx'
import { Released } from './Released.tsx'
import { releaseOf } from './release.ts'
import { Signatures } from './Signatures.tsx'
import { isOnlyPerson, mayRelease, type Person, roleOf, UNKNOWN } from './signing.ts'
import './FinishPage.css'

export function FinishPage({ unit }: { unit: string }) {
  const folded = useUnit(unit)
  if (folded === null) return <p class="starting">{all.shell.opening}</p>
  if (folded.entries.length === 0) return <NotHere />
  return <OpenFinish folded={folded} />
}

function OpenFinish({ folded }: { folded: FoldedUnit }) {
  const { book, settings } = useApp()
  const { atWork } = usePeople()
  const role = roleOf(book.name === 'practice', book.status, settings.person !== null)
  const person: Person = { who: book.who, device: book.device.id, role, people: atWork }
  const alone = isOnlyPerson(folded, person)
  const open = useMemo(() => openBefore(folded, { onlyPerson: alone }), [folded, alone])
  const groups = useMemo(() => groupsOf(open), [open])
  const [back, setBack] = useState(false)
  const { released } = folded.work
  const backs = useMemo(() => comeBacksNow(folded), [folded])
  return (
    <Shell title={words.title} over={folded.unit.name ?? all.unit.noName}>
      <div class="finish sides">
        <div>
          {released !== undefined && <Released folded={folded} />}
          {backs.map((back) => (
            <BackCard key={back.event} folded={folded} back={back} />
          ))}
          {backs.length > 0 && (
            <Answers folded={folded} complaint={backs.map(({ complaint }) => complaint).join('\n')} />
          )}
          {released === undefined && (
            <div class="stack stack--tight" role="status">
              <h2 tabIndex={-1} class={`finish__open sign ${open.length === 0 ? 'sign--fits' : 'sign--may'}`}>
                <Icon name={open.length === 0 ? 'tick' : 'list'} />
                {open.length === 0 ? words.nothingOpen : words.open(open.length)}
              </h2>
              <p>{open.length > 0 ? words.openWhat : alone ? words.nothingOpenAlone : words.nothingOpenWhat}</p>
            </div>
          )}
          {released === undefined &&
            groups.map(({ group, lines }) => (
              <section key={group} class="card stack stack--tight">
                <h3>{words.groups[group]}</h3>
                <ul class="lines">
                  {lines.map((line) => (
                    <li key={JSON.stringify(line.why)}>
                      <OpenLine line={line} folded={folded} />
                    </li>
                  ))}
                </ul>
              </section>
            ))}
        </div>
        <div>
          <Signatures folded={folded} person={person} alone={alone} open={open} isReleased={released !== undefined} />
          <InstrumentsUsed folded={folded} />
          <div class="card">
            <RecordPaper folded={folded} />
          </div>
        </div>
      </div>
      <Foot>
        {released === undefined ? (
          <ReleaseButton folded={folded} open={open.length} person={person} alone={alone} />
        ) : (
          <button type="button" class="button button--act" onClick={() => setBack(true)}>
            <Icon name="undo" />
            {words.cameBack}
          </button>
        )}
      </Foot>
      {back && <ComeBackSheet folded={folded} onClose={() => setBack(false)} />}
    </Shell>
  )
}

type ReleaseProps = { folded: FoldedUnit; open: number; person: Person; alone: boolean }

/** What is released is the record as it lies on the disk: it is read anew, and judged anew. */
function ReleaseButton({ folded, open, person, alone }: ReleaseProps) {
  const { book, write, say } = useApp()
  const [busy, setBusy] = useState(false)

  async function release() {
    if (!mayRelease(person))
      return say({ words: person.role === UNKNOWN ? words.whoUnknown : words.mayNotRelease, tone: 'fault' })
    if (open > 0) {
      document.querySelector<HTMLElement>('.finish__open')?.focus()
      return say({ words: words.notYet(open), tone: 'fault' })
    }
    setBusy(true)
    try {
      const made = releaseOf(await book.device.unitOf(folded.id), alone)
      if (!made.ok) return say({ words: words.notYet(made.stops.length), tone: 'fault' })
      if ((await write(folded.id, [made.happening], words.released)) !== null) scrollTo(0, 0)
    } catch (error) {
      say({ words: faultWords(error), tone: 'fault' })
    } finally {
      setBusy(false)
    }
  }

  return (
    <button
      type="button"
      class={`button${open === 0 ? ' button--act' : ''}`}
      disabled={busy}
      onClick={() => void release()}
    >
      <Icon name={open === 0 ? 'tick' : 'list'} />
      {open === 0 ? words.release : words.releaseOpen(open)}
    </button>
  )
}
