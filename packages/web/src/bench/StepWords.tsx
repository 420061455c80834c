/** The words of a step: which hole, which bolt, what the hands should feel, with what. */

import type { Kind } from '@gripbook/engine'
import { intervalOf } from '@gripbook/engine'
import { openBefore } from '@gripbook/record'
import { useApp } from '../app/context.ts'
import { usePhotograph } from '../device/usePhotograph.ts'
import { Icon } from '../look/icons.tsx'
import { Caution } from '../parts/Caution.tsx'
import { Choice } from '../parts/Choice.tsx'
import { turnsText } from '../readings/turns.ts'
import { partName, partNameIn } from '../unit/partName.ts'
import { useNames } from '../unit/useNames.ts'
import { sayWhen } from '../units/when.ts'
import { words } from '../words/bench.ts'
import { language, words as shared } from '../words/index.ts'
import type { Bracket } from './bracket.ts'
import type { Over } from './general.ts'
import { LyingBolt } from './LyingBolt.tsx'
import { figureIn, toSet } from './torque.ts'
import type { Bench } from './useBench.ts'
import { WrenchDoubts } from './WrenchDoubts.tsx'

/** `tight`: the dock has no room for words. */
type Props = { bench: Bench; tight: boolean; onOpen: (over: Over) => void }

export function StepWords({ bench, tight, onOpen }: Props) {
  const { step, face, kind, named, at } = bench
  const hole = face.holes.find(({ id }) => id === step.hole)
  if (hole === undefined) return <FaceWords bench={bench} onOpen={onOpen} />
  const { what } = step.round
  return (
    <>
      <section class="bench-step" aria-live="polite">
        <h2 class="bench-step__hole" dir="auto">
          {words.hole(hole.id)}
        </h2>
        {what === 'pass' && <Wanted bench={bench} />}
        <p class={`bench-step__kind${what === 'pass' ? ' bench-step__kind--small' : ''}`} dir="auto">
          {kind === null
            ? at.choices.length > 0
              ? words.kindUnknown
              : bench.waiting
                ? shared.verdict.working
                : words.noKind
            : named(kind.id)}
        </p>
        <Hands bench={bench} />
      </section>
      {step.round.apart && (
        <p class="bench__note">
          <Icon name="question" size={20} />
          {words.apart}
        </p>
      )}
      {tight && what === 'pass' && step.done === null && (
        <WrenchDoubts bench={bench} onWrench={() => onOpen('wrench')} />
      )}
      {what === 'start' && (
        <>
          {at.choices.length > 0 && (
            <div class="stack stack--tight">
              <p>{words.kindUnknownWhat}</p>
              <Choice
                label={words.kindUnknown}
                quiet
                options={at.choices.map(({ kind: id, hint }) => ({
                  value: id,
                  words:
                    hint === null
                      ? named(id)
                      : `${named(id)} · ${hint === 'likeliest' ? words.likeliest : words.foundHere}`,
                }))}
                value={kind?.id ?? null}
                onChoose={bench.pick}
              />
            </div>
          )}
          {bench.brackets.map((bracket) => (
            <BracketLine key={bracket.part} bracket={bracket} />
          ))}
          {bench.brackets.length === 0 && hole.bracket !== undefined && (
            <p class="bench__note">
              <Icon name="part" size={20} />
              {words.bracketThere}
            </p>
          )}
          {hole.needs !== undefined && hole.needs.length > 0 && (
            <p class="bench__note" dir="auto">
              <Icon name="warning" size={20} />
              {words.needs(hole.needs)}
            </p>
          )}
          {step.key === bench.next?.key && <Behind bench={bench} />}
        </>
      )}
      {hole.note !== undefined && what !== 'mark' && (
        <p class="bench__own" dir="auto">
          {hole.note}
        </p>
      )}
      {kind !== null && what !== 'mark' && what !== 'pass' && (
        <LyingBolt kind={kind} hole={hole} name={named(kind.id)} />
      )}
      {what === 'pass' && <Caution name="bench-wrench" words={words.cautionWrench} seen={words.cautionSeen} />}
      <div class="bench__answers">
        <button type="button" class="button" onClick={() => onOpen('why')}>
          {words.why}
        </button>
        <button type="button" class="button" onClick={() => onOpen('another')}>
          {words.another}
        </button>
        <button type="button" class="button" onClick={() => onOpen('short')}>
          {words.short}
        </button>
      </div>
      <p class="quiet">{words.manual}</p>
    </>
  )
}

/** What the hands do and should feel. */
function Hands({ bench }: { bench: Bench }) {
  const { step, pair, kind } = bench
  const nameOf = useNames()
  if (step.done !== null)
    return (
      <p class="bench-step__done">
        <Icon name="tick" />
        {words.doneBy(nameOf(step.done.who), sayWhen(step.done.at, Date.now(), { language }))}
      </p>
    )
  switch (step.round.what) {
    case 'start':
      return (
        <>
          {step.locates && <p class="bench-step__first">{words.startFirst}</p>}
          <p>
            {words.start} {words.startFree}
          </p>
          <ToolLine words={words.fingers} />
        </>
      )
    case 'run down':
      return (
        <>
          <p class="bench-step__turns">
            {pair?.turns === undefined
              ? words.turnsUnknown
              : words.turns(turnsText(pair.turns[0]), turnsText(pair.turns[1]))}
          </p>
          <p>
            {words.runDown} {words.turnsUsual}
          </p>
          <ToolLine words={[words.lightRatchet, ...socketOf(kind)].join(', ')} />
        </>
      )
    case 'snug':
      return (
        <>
          <p>{words.snug}</p>
          <ToolLine words={[words.lightRatchet, ...socketOf(kind)].join(', ')} />
        </>
      )
    case 'mark':
      return <p>{words.mark}</p>
    case 'pass':
      return <ToolLine words={[wrenchName(bench), ...socketOf(kind)].join(', ')} />
    case 'close':
      return null
  }
}

function Wanted({ bench }: { bench: Bench }) {
  const { settings } = useApp()
  const { wanted, wrench } = bench
  if (wanted === null)
    return (
      <div class="stack stack--tight">
        <p class="bench-step__kind">{words.noTorque}</p>
        <p>{words.noTorqueWhat}</p>
      </div>
    )
  const unit = settings.torque
  const figure = figureIn(wanted, unit)
  const set = toSet(wanted, wrench.extension)
  return (
    <>
      <p class="bench-step__torque">{words.wanted(figure, unit)}</p>
      {wrench.extension !== null && set !== null && (
        <p class="bench-step__set">{words.setTo(figureIn(set, unit), unit)}</p>
      )}
    </>
  )
}

function wrenchName({ wrench: { wrench } }: Bench): string {
  if (wrench === null) return words.wrench
  return wrench.tells === 'nothing' ? words.feelWrench : wrench.name
}

function ToolLine({ words: said }: { words: string }) {
  return (
    <p class="bench-step__tool" dir="auto">
      <Icon name="gear" size={20} />
      <span>
        <span class="unseen">{words.tool} </span>
        {said}
      </span>
    </p>
  )
}

/** The socket for the head, where its size is known. */
function socketOf(kind: Kind | null): string[] {
  if (kind?.head?.acrossFlats === undefined) return []
  const { lo, hi } = intervalOf(kind.head.acrossFlats)
  return Number.isFinite(hi) ? [words.socket(String(Number(((lo + hi) / 2).toFixed(1))))] : []
}

function BracketLine({ bracket }: { bracket: Bracket }) {
  const photograph = usePhotograph(bracket.photograph ?? undefined, 320)
  const name = partName(bracket)
  return (
    <div class="bench-bracket">
      {photograph.state === 'here' && <img src={photograph.url} alt={words.bracketPicture(name)} />}
      <div>
        <p dir="auto">
          <b>{words.bracket(name)}</b>
        </p>
        {bracket.wayRound !== null && <p dir="auto">{words.wayRound(bracket.wayRound)}</p>}
      </div>
    </div>
  )
}

/** Before the cover goes on: what came out behind it and is not in again. */
function Behind({ bench }: { bench: Bench }) {
  const { folded, face, steps, step } = bench
  if (steps.some(({ round, done }) => round.what !== 'start' && done !== null) || steps[0] !== step) return null
  const out = openBefore(folded, {}, { close: face.id }).flatMap(({ why }) =>
    why.code === 'part-out' ? [why.part] : [],
  )
  const springs = Object.values(folded.things.part).some(
    ({ what, face: at }) =>
      at?.value === face.id && (what?.value === 'spring' || what?.value === 'plate' || what?.value === 'ring'),
  )
  return (
    <>
      {out.length > 0 && (
        <p class="bench__note bench__note--may" dir="auto">
          <Icon name="warning" size={20} />
          {words.behind(out.map((part) => partNameIn(folded, part)))}
        </p>
      )}
      {springs && <Caution name="bench-spring" words={words.cautionSpring} seen={words.cautionSeen} />}
    </>
  )
}

/** The face as a whole: it is closed, or all is done. */
function FaceWords({ bench, onOpen }: Pick<Props, 'bench' | 'onOpen'>) {
  const { step, steps } = bench
  const left = [...new Set(steps.flatMap(({ hole, done }) => (hole === null || done !== null ? [] : [hole])))]
  const finished = step.done !== null && left.length === 0
  return (
    <section class="bench-step" aria-live="polite">
      <h2 class="bench-step__hole">{finished ? words.finished : words.rounds.close}</h2>
      <p>{finished ? words.finishedWhat : words.close}</p>
      {left.length > 0 && (
        <p class="bench__note bench__note--may">
          <Icon name="warning" size={20} />
          {words.notDoneAt(left)}
        </p>
      )}
      {step.done !== null && (
        <button type="button" class="button" onClick={() => onOpen('open again')}>
          <Icon name="undo" />
          {words.openAgain}
        </button>
      )}
      <p class="quiet">{shared.verdict.notPermission}</p>
    </section>
  )
}
