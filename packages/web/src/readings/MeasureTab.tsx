/** The measuring station: one spot after the other, as fast as a gauge types. */
import type { Face, FaceAnswer, Quantity } from '@gripbook/engine'
import { writeQuantity } from '@gripbook/engine'
import { type FoldedUnit, readingTaken, undone } from '@gripbook/record'
import { useEffect, useMemo, useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Caution } from '../parts/Caution.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useTypedFigure } from '../parts/useTypedFigure.ts'
import { sayFault, words } from '../words/index.ts'
import { changedBetween } from './changed.ts'
import { instrumentFor, isFigure, midOf, placeOf, readingOf, shortFigure } from './entry.ts'
import { FigurePad, KeysSwitch } from './FigurePad.tsx'
import { InstrumentButton, InstrumentSheet } from './Instrument.tsx'
import { isDoubted, type Kept, KeptLine, LastLine } from './KeptLine.tsx'
import { NoKinds } from './NoKinds.tsx'
import { type Lead, nextSpot } from './order.ts'
import { QuantitySheet } from './QuantitySheet.tsx'
import {
  isKindQuantity,
  isReadQuantity,
  keyOf,
  kindsOf,
  type ReadQuantity,
  type Spot,
  same,
  spotsOf,
  valueAt,
} from './quantities.ts'
import { Sketch } from './Sketch.tsx'
import { Strip } from './Strip.tsx'
import { depthSlip, type Slip, slipOf } from './slip.ts'

type Props = {
  folded: FoldedUnit
  face: Face
  answer: FaceAnswer | null
  named: (kind: string) => string
  lead: Lead | null
  start: { quantity: ReadQuantity; id: string | null }
  onTry: () => void
  onTray: () => void
}

type NotKept = { spot: Spot; quantity: ReadQuantity; text: string }

export function MeasureTab({ folded, face, answer, named, lead, start, onTry, onTray }: Props) {
  const { settings, write } = useApp()
  const unit = folded.unit
  const figure = useTypedFigure(
    `reading ${folded.id} ${face.id}`,
    { text: '', of: '', spot: '' },
    ({ of, spot }) => isReadQuantity(of) && spotsOf(of, unit, face).some((one) => keyOf(one) === spot),
  )
  const { begun, text } = figure
  const [quantity, setQuantity] = useState<ReadQuantity>(() =>
    begun !== null && isReadQuantity(begun.of) ? begun.of : start.quantity,
  )
  const spots = useMemo(() => spotsOf(quantity, unit, face), [quantity, unit, face])
  const input = useRef<HTMLInputElement>(null)
  const [fault, setFault] = useState('')
  const [sheet, setSheet] = useState<'quantity' | 'instrument' | 'lately' | null>(null)
  /** Newest first: what was kept last, and before it what looked like a slip and was not looked at again. */
  const [lately, setLately] = useState<readonly Kept[]>([])
  /** Readings that look like a slip, so that the next ones are not held against them. */
  const doubted = useRef(new Set<string>())
  const [notKept, setNotKept] = useState<NotKept | null>(null)
  /** What is on its way to the disk, so that the next spot is known before it is there. */
  const [coming, setComing] = useState<ReadonlyMap<string, { value: Quantity; event: string | null }>>(new Map())
  const entries = useMemo(() => new Set(folded.entries.map(({ id }) => id)), [folded])

  const knownAt = (spot: Spot, of = quantity): Quantity | undefined => {
    const soon = coming.get(`${of} ${keyOf(spot)}`)
    if (soon !== undefined && (soon.event === null || !entries.has(soon.event))) return soon.value
    return valueAt(of, spot, unit, face)
  }
  /** Ends, such as "11 to 13", are a guess until a figure was read; what was just typed here counts whatever it is. */
  const isRead = (spot: Spot, of = quantity) => {
    const value = knownAt(spot, of)
    return value !== undefined && (isFigure(value) || coming.has(`${of} ${keyOf(spot)}`))
  }
  const lacking = (after: Spot | null) => nextSpot(spots, isRead, after)

  const [current, setCurrent] = useState<Spot | null>(
    () =>
      spots.find((spot) => keyOf(spot) === begun?.spot) ??
      spots.find(({ id, place }) => id === start.id && place !== 'face') ??
      lacking(null),
  )
  /** The same as `current`, for what is typed before the page is drawn again. */
  const at = useRef(current)
  const touched = useRef(begun !== null)
  const about = { of: quantity, spot: current === null ? '' : keyOf(current) }
  const setText = (typed: string) => figure.setText(typed, about)
  const moveTo = (spot: Spot | null) => {
    at.current = spot
    setCurrent(spot)
  }

  useEffect(() => {
    if (sheet !== null) return
    input.current?.focus({ preventScroll: true })
    // Keys of true millimetres reach below the edge of a low screen.
    input.current?.form?.scrollIntoView({ block: 'nearest' })
  }, [current, quantity, sheet])

  useEffect(() => figure.turnTo(about), [about.of, about.spot])

  // What settles most is known only after a first look at the face; until a hand has chosen, the station follows.
  useEffect(() => {
    if (touched.current || lead?.to !== 'reading' || start.id !== lead.id || start.quantity !== lead.quantity) return
    takeUp(lead.quantity, lead.id)
    touched.current = false
  }, [start.id, start.quantity])

  function takeUp(of: ReadQuantity, id: string | null) {
    touched.current = true
    setQuantity(of)
    setText('')
    setFault('')
    const all = spotsOf(of, unit, face)
    moveTo(all.find((spot) => spot.id === id) ?? nextSpot(all, (spot) => isRead(spot, of), null))
  }

  function pick(spot: Spot) {
    touched.current = true
    setFault('')
    moveTo(spot)
    input.current?.focus({ preventScroll: true })
  }

  async function keep(typed: string) {
    const spot = at.current
    if (spot === null || typed.trim() === '') return
    touched.current = true
    const instrument = instrumentFor(quantity, settings)
    const read = readingOf(typed, settings.length, instrument)
    if (!read.ok) {
      setText(typed)
      setFault(sayFault(read.fault))
      return
    }
    const { value } = read.taken
    const slip = slipAt(spot, value)
    const key = `${quantity} ${keyOf(spot)}`
    const before = answer
    if (slip === null) doubted.current.delete(key)
    else doubted.current.add(key)
    setComing((now) => new Map(now).set(key, { value, event: null }))
    setText('')
    setFault('')
    if (input.current !== null) input.current.value = ''
    // Whoever takes readings again, goes on to the one after.
    moveTo(lacking(spot) ?? (isRead(spot) ? (spots[spots.findIndex((one) => same(one, spot)) + 1] ?? null) : null))
    const events = await write(folded.id, [readingTaken({ of: placeOf(face.id, spot, quantity), ...read.taken })])
    const event = events?.[0]
    setComing((now) => {
      const next = new Map(now)
      if (event === undefined) next.delete(key)
      else next.set(key, { value, event: event.id })
      return next
    })
    if (event === undefined) {
      setNotKept({ spot, quantity, text: typed })
      return
    }
    setLately((now) => [
      { key, spot, quantity, value, event: event.id, slip, before },
      ...now.filter((one) => one.slip !== null && one.key !== key),
    ])
  }

  /** Beside holes of the same thread: those of another are another sort of place. */
  function slipAt(spot: Spot, value: Quantity): Slip | null {
    const threadOf = ({ id }: Spot) => String(face.holes.find((hole) => hole.id === id)?.thread)
    const others =
      spot.place === 'hole'
        ? spots.filter((one) => one.place === 'hole' && !same(one, spot) && threadOf(one) === threadOf(spot))
        : []
    const mids = others.flatMap((one) => {
      const known = doubted.current.has(`${quantity} ${keyOf(one)}`) ? undefined : knownAt(one)
      return known === undefined || !isFigure(known) ? [] : [midOf(known)]
    })
    const hole = face.holes.find(({ id }) => spot.place === 'hole' && id === spot.id)
    return (hole && depthSlip(hole, quantity, midOf(value))) ?? slipOf(midOf(value), mids)
  }

  /** It was looked at: taken back, to be taken again, or right as it is. */
  function settle({ key, event }: Kept) {
    doubted.current.delete(key)
    setLately((now) => now.filter((one) => one.event !== event))
  }

  async function undoKept(kept: Kept) {
    const { spot, quantity: of, event } = kept
    if ((await write(folded.id, [undone({ event })])) === null) return
    settle(kept)
    if (of !== quantity) setQuantity(of)
    moveTo(spot)
  }

  function again({ spot, quantity: of, text: typed }: { spot: Spot; quantity: ReadQuantity; text?: string }) {
    takeUp(of, spot.id)
    // What could not be kept is in the field again as it was typed.
    if (typed !== undefined) setText(typed)
  }

  const last = lately[0]
  const changed =
    last === undefined || answer === null || answer === last.before ? null : changedBetween(last.before, answer)
  const saidSpot = (spot: Spot) => words.readings.spot(spot, named(spot.id))
  const ofSpot = (spot: Spot) => words.readings.ofSpot(spot, named(spot.id))
  const inUnit = (mm: number) => `${shortFigure(mm, settings.length)} ${settings.length}`
  const stands = current === null ? undefined : knownAt(current)
  const leadIsHere = lead?.to === 'reading' && current !== null && lead.quantity === quantity && current.id === lead.id
  const noKinds = isKindQuantity(quantity) && kindsOf(unit, face).length === 0
  const depth = quantity === 'bottomDepth' || quantity === 'threadDepth' || quantity === 'mouth'

  const saidKept = (kept: Kept) => ({
    kept: words.readings.kept(kept.quantity, ofSpot(kept.spot), writeQuantity(kept.value)),
    slip: kept.slip === null ? null : words.readings.slip(kept.slip, saidSpot(kept.spot), inUnit),
  })
  const keptLine = (kept: Kept, i: number) => (
    <KeptLine
      key={kept.event}
      kept={kept}
      changed={i === 0 ? changed : null}
      words={saidKept(kept)}
      onUndo={() => {
        setSheet(null)
        void undoKept(kept)
      }}
      onAgain={() => {
        setSheet(null)
        settle(kept)
        again(kept)
      }}
      onStands={() => {
        setSheet(null)
        settle(kept)
      }}
    />
  )

  return (
    <div class="station">
      <div class="station__around">
        {lead !== null && !leadIsHere && (
          <div class="station__lead">
            <p>
              <strong>{words.readings.settlesMost}:</strong> {sayLead(lead, answer, named)}
            </p>
            <button
              type="button"
              class="button"
              onClick={() => (lead.to === 'try' ? onTry() : takeUp(lead.quantity, lead.id))}
            >
              <Icon name={lead.to === 'try' ? 'turns' : 'measure'} />
              {lead.to === 'try' ? words.readings.goTry : words.readings.goThere}
            </button>
          </div>
        )}
        {leadIsHere && answer?.next && (
          <p class="station__here">
            <Icon name="tick" size={18} />
            {words.readings.lead(words.readings.leadHere, answer.next.settles)}
          </p>
        )}
        {depth && <Caution name="air" words={words.readings.air} seen={words.readings.airSeen} />}
        <div role="status" class="station__kept">
          {lately.map(keptLine)}
        </div>
        {notKept !== null && (
          <div class="caution" role="alert">
            <Icon name="warning" />
            <div class="stack stack--tight">
              <p>{words.readings.notKept(saidSpot(notKept.spot), notKept.text)}</p>
              <button
                type="button"
                class="button"
                onClick={() => {
                  setNotKept(null)
                  again(notKept)
                }}
              >
                {words.readings.again}
              </button>
            </div>
          </div>
        )}
        <Strip
          label={words.readings.strip(quantity)}
          cells={spots.map((spot) => {
            const value = knownAt(spot)
            return {
              spot,
              name: named(spot.id),
              value: value === undefined ? null : shortFigure(value, settings.length),
            }
          })}
          current={current}
          onPick={pick}
        />
        {noKinds && <NoKinds onTray={onTray} />}
        {spots.length === 0 && !noKinds && <p class="empty">{words.readings.noSuch(quantity)}</p>}
        <div class="station__switch">
          <KeysSwitch />
        </div>
      </div>
      <section class="station__dock" aria-label={words.readings.now}>
        {last !== undefined && current !== null && (
          <LastLine doubted={isDoubted(last, changed)} words={saidKept(last)} onOpen={() => setSheet('lately')} />
        )}
        <div class="station__now">
          <Sketch of={quantity} size={68} />
          <div class="station__what">
            <button type="button" class="station__quantity" onClick={() => setSheet('quantity')}>
              <span>{words.readings.names[quantity]}</span>
              <Icon name="change" size={18} />
              <span class="unseen">{words.readings.changeQuantity}</span>
            </button>
            {current === null ? (
              spots.length > 0 && <p class="quiet">{words.readings.allHave}</p>
            ) : (
              <p class="station__spot" dir="auto">
                {saidSpot(current)}
              </p>
            )}
          </div>
          <InstrumentButton quantity={quantity} onOpen={() => setSheet('instrument')} />
        </div>
        {current === null ? (
          spots.length > 0 && <p class="quiet">{words.readings.allHaveWhat}</p>
        ) : (
          <>
            {stands !== undefined && <p class="quiet">{words.readings.asStands(writeQuantity(stands))}</p>}
            <FigurePad
              label={words.readings.field(words.readings.names[quantity], saidSpot(current))}
              unit={settings.length}
              text={text}
              fault={fault}
              onText={(typed) => {
                touched.current = true
                setText(typed)
                setFault('')
              }}
              onKeep={(typed) => void keep(typed)}
              inputRef={input}
            />
          </>
        )}
      </section>
      {sheet === 'quantity' && (
        <QuantitySheet
          unit={unit}
          face={face}
          current={quantity}
          onPick={(of) => {
            takeUp(of, null)
            setSheet(null)
          }}
          onClose={() => setSheet(null)}
        />
      )}
      {sheet === 'lately' && lately.length > 0 && (
        <Sheet title={words.readings.lately} onClose={() => setSheet(null)}>
          <div class="station__kept">{lately.map(keptLine)}</div>
        </Sheet>
      )}
      {sheet === 'instrument' && <InstrumentSheet quantity={quantity} onClose={() => setSheet(null)} />}
    </div>
  )
}

export function sayLead(lead: Lead, answer: FaceAnswer | null, named: (kind: string) => string): string {
  const what =
    lead.to === 'try'
      ? words.readings.leadTry(named(lead.kind), lead.hole)
      : lead.place === 'kind'
        ? words.readings.ofWhat(lead.quantity, named(lead.id))
        : words.readings.ofWhat(lead.quantity, words.readings.ofSpot({ place: 'hole', id: lead.id }, ''))
  return `${words.readings.lead(what, answer?.next?.settles ?? [])}.`
}
