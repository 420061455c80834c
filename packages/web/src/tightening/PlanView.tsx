/** What the sums say: the order on the photograph, step by step or beside another one, with what the figures are. */
import type { Fault, OrderAnswer, TighteningAnswer } from '@gripbook/engine'
import { orderChosen } from '@gripbook/record'
import { useMemo, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { BenchLink } from '../bench/BenchLink.tsx'
import { Stage } from '../face/stage/Stage.tsx'
import type { PicturePoint } from '../face/stage/view.ts'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { words as shared } from '../words/index.ts'
import { words } from '../words/tightening.ts'
import { faceFile } from '../workers/useAnswer.ts'
import { Assumptions } from './Assumptions.tsx'
import { CompareTab } from './CompareTab.tsx'
import { CoverLayer } from './CoverLayer.tsx'
import { draftOf } from './draft.ts'
import { placedFault } from './faultPlace.ts'
import { type Frame, holePlaces } from './frame.ts'
import { GaugeLayer } from './GaugeLayer.tsx'
import { MapLayer, MapLegend } from './MapLayer.tsx'
import { OrderTab } from './OrderTab.tsx'
import { HoleTags, orderMarks, plainMarks, WayLayer } from './orderMarks.tsx'
import { Progress } from './Progress.tsx'
import { StepsTab } from './StepsTab.tsx'
import { advisedOrder, orderInUse, passesToKeep } from './said.ts'
import type { Seen } from './seen.ts'
import { barsAt, fullBar } from './steps.ts'
import { type Plan, useCoverMap, useTightening } from './useTightening.ts'

type Props = Seen & { frame: Frame; onCover: (faults: readonly Fault[]) => void }

const TABS = ['order', 'steps', 'compare'] as const
type Tab = (typeof TABS)[number]

const NO_NAMES: ReadonlyMap<string, string> = new Map()

/** px */
const LOW = 700

/** Usual passes by source: 30, 60 and 100 % leads. */
const SHARES = [[0.3, 0.6, 1], [0.5, 1], [0.2, 0.4, 0.6, 0.8, 1], [1]] as const satisfies readonly (readonly number[])[]

export function PlanView({ folded, face, picture, url, away, frame, onCover }: Props) {
  const { settings, write, book } = useApp()
  const work = folded.faces[face.id]
  const unit = useMemo(() => faceFile(folded, face.id).unit, [folded, face.id])
  const [shares, setShares] = useState<readonly number[]>(SHARES[0])
  const plan = useTightening(unit, face.id, shares)
  const { answer } = plan
  const [tab, setTab] = useState<Tab>('order')
  const [picked, setPicked] = useState<OrderAnswer['kind'] | null>(null)
  const [at, setAt] = useState(0)
  const [mapped, setMapped] = useState(false)
  const order = answer === null ? null : shownOrder(answer, picked)
  const inUse = answer === null ? null : orderInUse(answer.orders, work?.orderChosen)
  const last = order === null ? 0 : order.steps.length - 1
  const step = Math.min(at, last)
  const places = useMemo(() => holePlaces(face, work, frame), [face, work, frame])
  const drawn = useMemo(() => draftOf(face, settings.length), [face, settings.length])
  const atEnd = order?.steps.at(-1)?.loads ?? []
  const loads = tab === 'steps' ? (order?.steps[step]?.loads ?? null) : atEnd
  const cover = useCoverMap(unit, face.id, mapped && answer !== null ? loads : null, atEnd)
  const shownStep = tab === 'steps' ? step : null
  const marks = useMemo(
    () => (answer === null || order === null ? plainMarks(places) : orderMarks(answer, order, shownStep, places)),
    [answer, order, shownStep, places],
  )
  const bars = answer === null || order === null || shownStep === null ? null : barsAt(answer, order, shownStep)
  const near = useMemo(
    () =>
      plan.faults.flatMap((fault): PicturePoint[] => {
        const { near: spot } = placedFault(fault, face)
        return spot === undefined ? [] : [frame.toPicture(spot)]
      }),
    [plan.faults, face, frame],
  )
  const show = (kind: OrderAnswer['kind']) => {
    setPicked(kind)
    setAt(0)
  }

  async function use(chosen: OrderAnswer) {
    const name = words.orders[chosen.kind]
    await write(folded.id, [orderChosen({ face: face.id, name, passes: passesToKeep(chosen) })], words.used(name))
  }

  // Large buttons or a low screen leave a small picture: then this lies in the panel.
  const inPanel = settings.gloves || innerHeight < LOW
  const pictureChoice = (
    <Choice
      label={words.mapLabel}
      quiet
      options={[
        { value: 'photograph', words: words.mapHide },
        { value: 'map', words: words.mapShow },
      ]}
      value={mapped ? 'map' : 'photograph'}
      onChoose={(value) => setMapped(value === 'map')}
    />
  )
  return (
    <div class="face tightening">
      <Stage
        picture={picture}
        url={url}
        marks={marks}
        names={NO_NAMES}
        mode="look"
        selected={undefined}
        points={near}
        onOpen={(hole) => {
          if (hole === null || order === null) return
          // Its turn in the pass that is looked at, else its last one.
          const inPass = order.steps.findIndex(
            (one) => one.hole === hole && shownStep !== null && one.pass === order.steps[shownStep]?.pass,
          )
          const found = inPass >= 0 ? inPass : order.steps.findLastIndex((one) => one.hole === hole)
          if (found < 0) return
          setTab('steps')
          setAt(found)
        }}
        onAdd={() => {}}
        onMove={() => {}}
        onPoint={() => {}}
        layer={
          <>
            {mapped && cover.map !== null && (
              <MapLayer map={cover.map} greatest={cover.greatest} picture={picture} frame={frame} cover={drawn} />
            )}
            <CoverLayer picture={picture} frame={frame} draft={drawn} />
            {order !== null && (
              <HoleTags places={places} now={shownStep === null ? null : (order.steps[step]?.hole ?? null)} />
            )}
            {bars !== null && order !== null && answer !== null && (
              <GaugeLayer bars={bars} full={fullBar(answer, [order])} places={places} />
            )}
            {order !== null && <WayLayer order={order} step={shownStep} places={places} picture={picture} />}
          </>
        }
      >
        <div class="stage__over">
          {!inPanel && pictureChoice}
          {away && <p class="stage__note">{shared.photograph.away}</p>}
        </div>
      </Stage>
      <div class="face__panel">
        <div class="stack">
          {answer !== null && (
            <div class="plan-tabs">
              <Choice
                label={words.tabsLabel}
                quiet
                options={TABS.map((value) => ({ value, words: words.tabs[value] }))}
                value={tab}
                onChoose={setTab}
              />
            </div>
          )}
          {inPanel && <div class="plan-tabs">{pictureChoice}</div>}
          <PlanState
            plan={plan}
            onCover={() => onCover(plan.faults)}
            faults={plan.faults.map((fault) => placedFault(fault, face).words)}
          />
          {answer !== null && order !== null && tab === 'order' && (
            <OrderTab
              answer={answer}
              searched={plan.searched}
              order={order}
              chosen={work?.orderChosen}
              toBench={<BenchLink folded={folded} face={face.id} book={book.name} />}
              shares={shares}
              offered={SHARES}
              onShow={show}
              onShares={setShares}
            />
          )}
          {answer !== null && order !== null && tab === 'steps' && (
            <StepsTab answer={answer} order={order} at={step} onAt={setAt} />
          )}
          {answer !== null && order !== null && tab === 'compare' && (
            <CompareTab answer={answer} left={order} onLeft={show} />
          )}
          {mapped && answer !== null && <MapLegend cover={cover} />}
          {answer !== null && <Assumptions answer={answer} />}
        </div>
      </div>
      <nav class="face__bar tightening__bar" aria-label={words.title}>
        {tab === 'steps' && order !== null ? (
          <>
            <button type="button" class="button" disabled={step === 0} onClick={() => setAt(step - 1)}>
              <Icon name="back" />
              {words.back}
            </button>
            <button type="button" class="button button--act" disabled={step === last} onClick={() => setAt(step + 1)}>
              {words.next}
              <Icon name="forth" />
            </button>
          </>
        ) : (
          <>
            <button type="button" class="button" onClick={() => onCover(plan.faults)}>
              <Icon name="outline" />
              {words.cover}
            </button>
            <button
              type="button"
              class="button button--act"
              disabled={order === null || order === inUse}
              onClick={() => order !== null && void use(order)}
            >
              <Icon name="tick" />
              {order !== null && order === inUse ? words.using : words.use}
            </button>
          </>
        )}
      </nav>
    </div>
  )
}

function PlanState({ plan, faults, onCover }: { plan: Plan; faults: readonly string[]; onCover: () => void }) {
  if (faults.length > 0)
    return (
      <div class="empty" role="alert">
        <h2>{words.cannot}</h2>
        <ul class="stack stack--tight">
          {faults.map((fault) => (
            <li key={fault} class="field__fault">
              {fault}
            </li>
          ))}
        </ul>
        <button type="button" class="button button--act" onClick={onCover}>
          <Icon name="outline" />
          {words.toCover}
        </button>
      </div>
    )
  if (plan.failed !== null)
    return (
      <div class="stack stack--tight">
        <p class="field__fault">{words.failed(plan.failed)}</p>
        <button type="button" class="button" onClick={plan.again}>
          {words.startAgainSums}
        </button>
      </div>
    )
  if (plan.working !== null) return <Progress working={plan.working} onStop={plan.stop} />
  if (!plan.stopped) return null
  return (
    <div class="plan-stopped">
      <p role="status">{plan.answer === null ? words.stoppedEarly : words.stopped}</p>
      <button type="button" class="button" onClick={plan.again}>
        {plan.answer === null ? words.startAgainSums : words.again}
      </button>
    </div>
  )
}

function shownOrder(answer: TighteningAnswer, picked: OrderAnswer['kind'] | null): OrderAnswer {
  return answer.orders.find(({ kind }) => kind === picked) ?? advisedOrder(answer)
}
