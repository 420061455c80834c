/** From what was typed of a wrench to the wrench. */
import type { Wrench } from '../device/settings.ts'
import { given, oneLine } from '../units/texts.ts'
import { RATCHET } from './wrenchHere.ts'

export type WrenchDraft = {
  name: string
  number: string
  tells: 'clicks' | 'shows'
  /** Ends of its range, in the torque unit of the page. */
  from: string
  to: string
  /** Per cent. */
  deviation: string
  /** ISO day, or nothing. */
  until: string
}

export type WrenchFaults = {
  name?: 'wrenchNameNeeded' | 'wrenchNameTaken'
  range?: true
  deviation?: true
}

export type ReadWrench = { ok: true; wrench: Wrench } | { ok: false; faults: WrenchFaults }

/** `size`: N·m in one of the page's unit. Range, deviation and date may be left out; one end of a range alone may not. */
export function readWrench(draft: WrenchDraft, taken: readonly Wrench[], size: number): ReadWrench {
  const name = oneLine(draft.name)
  const faults: WrenchFaults = {}
  if (name === undefined) faults.name = 'wrenchNameNeeded'
  else if ([...taken, RATCHET].some((one) => one.name.toLowerCase() === name.toLowerCase()))
    faults.name = 'wrenchNameTaken'
  const [from, to, deviation] = [draft.from, draft.to, draft.deviation].map(figure) as [Figure, Figure, Figure]
  const noRange = from === null && to === null
  if (!noRange && !(typeof from === 'number' && typeof to === 'number' && from >= 0 && to > from)) faults.range = true
  if (deviation !== null && !(typeof deviation === 'number' && deviation >= 0.1 && deviation <= 50))
    faults.deviation = true
  if (name === undefined || Object.keys(faults).length > 0) return { ok: false, faults }
  return {
    ok: true,
    wrench: {
      name,
      tells: draft.tells,
      ...given('number', oneLine(draft.number)),
      ...(noRange ? {} : { range: [(from as number) * size, (to as number) * size] as [number, number] }),
      ...(deviation === null ? {} : { deviation: (deviation as number) / 100 }),
      ...(draft.until === '' ? {} : { calibratedUntil: draft.until }),
    },
  }
}

export const NO_WRENCH: WrenchDraft = {
  name: '',
  number: '',
  tells: 'clicks',
  from: '',
  to: '',
  deviation: '',
  until: '',
}

/** What the record knows of a wrench, as it would have been typed; how it tells, a label does not say. `size`: N·m in one of the page's unit. */
export function draftOf(
  { name, number, range, deviation, calibratedUntil }: Omit<Wrench, 'tells'>,
  size: number,
): WrenchDraft {
  const typed = (value: number | undefined) => (value === undefined ? '' : String(Number(value.toPrecision(4))))
  return {
    ...NO_WRENCH,
    name,
    number: number ?? '',
    from: typed(range && range[0] / size),
    to: typed(range && range[1] / size),
    deviation: typed(deviation && deviation * 100),
    until: calibratedUntil ?? '',
  }
}

/** null: nothing typed; undefined: no figure. */
type Figure = number | null | undefined

function figure(text: string): Figure {
  if (text.trim() === '') return null
  return /^\d{1,5}(?:[.,]\d+)?$/.test(text.trim()) ? Number(text.trim().replace(',', '.')) : undefined
}
