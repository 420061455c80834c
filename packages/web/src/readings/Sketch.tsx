/** Which distance is meant: a small section through part, gasket and threaded part, with the one distance between its two marks. */
import type { ReadQuantity } from './quantities.ts'
import './Sketch.css'

export type Sketched = ReadQuantity | 'proud'

/** Levels from top to bottom, in the sketch's own units. */
const LEVEL = { bracket: 16, part: 22, gasket: 44, joint: 48, mouth: 55, threadEnd: 76, bottom: 84, floor: 92, out: 74 }
const SPANS: Record<Exclude<Sketched, 'length' | 'threadLength' | 'tip'>, [number, number]> = {
  bracket: [LEVEL.bracket, LEVEL.part],
  grip: [LEVEL.part, LEVEL.gasket],
  gasket: [LEVEL.gasket, LEVEL.joint],
  mouth: [LEVEL.joint, LEVEL.mouth],
  threadDepth: [LEVEL.mouth, LEVEL.threadEnd],
  bottomDepth: [LEVEL.joint, LEVEL.bottom],
  behind: [LEVEL.out, LEVEL.floor],
  proud: [12, LEVEL.part],
}
const BOLT_SPANS: Record<'length' | 'threadLength' | 'tip', [number, number]> = {
  length: [20, 86],
  threadLength: [52, 86],
  tip: [80, 86],
}

export function Sketch({ of, size = 72 }: { of: Sketched; size?: number }) {
  const bolt = of === 'length' || of === 'threadLength' || of === 'tip'
  return (
    <svg class="sketch" viewBox="0 0 100 100" width={size} height={size} aria-hidden="true">
      {bolt ? <Bolt /> : <Section of={of} />}
      <Span ends={bolt ? BOLT_SPANS[of] : SPANS[of]} from={bolt ? 58 : 55} />
    </svg>
  )
}

function Section({ of }: { of: Exclude<Sketched, 'length' | 'threadLength' | 'tip'> }) {
  const through = of === 'behind'
  const foot = through ? LEVEL.out : LEVEL.floor + 6
  const thread = through ? LEVEL.out : LEVEL.threadEnd
  // The case left and right of the hole: mouth, thread, and where it is blind the drill's tip.
  const bore = through
    ? `M32 ${LEVEL.joint}H4V${foot}H35V${LEVEL.mouth}H32zM58 ${LEVEL.joint}H96V${foot}H55V${LEVEL.mouth}H58z`
    : `M32 ${LEVEL.joint}H4V${foot}H96V${LEVEL.joint}H58V${LEVEL.mouth}H55V${LEVEL.bottom - 4}L45 ${LEVEL.bottom}L35 ${LEVEL.bottom - 4}V${LEVEL.mouth}H32z`
  return (
    <>
      {of === 'bracket' && (
        <path
          class="sketch__bracket"
          d={`M18 ${LEVEL.bracket}H32V${LEVEL.part}H18zM58 ${LEVEL.bracket}H84V${LEVEL.part}H58z`}
        />
      )}
      <path
        class="sketch__part"
        d={`M10 ${LEVEL.part}H32V${LEVEL.gasket}H10zM58 ${LEVEL.part}H90V${LEVEL.gasket}H58z`}
      />
      <path
        class="sketch__gasket"
        d={`M10 ${LEVEL.gasket}H32V${LEVEL.joint}H10zM58 ${LEVEL.gasket}H90V${LEVEL.joint}H58z`}
      />
      <path class="sketch__case" d={bore} />
      <path class="sketch__thread" d={teeth(35, 3, LEVEL.mouth, thread) + teeth(55, -3, LEVEL.mouth, thread)} />
      {through && <path class="sketch__case" d={`M4 ${LEVEL.floor}H96V99H4z`} />}
      {of === 'proud' && (
        <>
          <path class="sketch__bolt" d="M33 2H57V12H33z" />
          <path class="sketch__bolt" d="M38 12H52V72L50 75H40L38 72z" />
        </>
      )}
    </>
  )
}

function Bolt() {
  return (
    <>
      <path class="sketch__bolt" d="M22 6H58V20H22z" />
      <path class="sketch__bolt" d="M30 20H50V82L46 86H34L30 82z" />
      <path class="sketch__thread" d={teeth(30, 3, 52, 80) + teeth(50, -3, 52, 80)} />
    </>
  )
}

/** The distance: two marks out to the right and an arrow between them. */
function Span({ ends: [from, to], from: left }: { ends: [number, number]; from: number }) {
  const x = 78
  const small = to - from < 12
  // Where there is no room between the marks the arrows come from outside.
  const arrows = small
    ? `M${x} ${from - 12}V${from}M${x - 4} ${from - 6}L${x} ${from}L${x + 4} ${from - 6}M${x} ${to + 12}V${to}M${x - 4} ${to + 6}L${x} ${to}L${x + 4} ${to + 6}`
    : `M${x} ${from}V${to}M${x - 4} ${from + 6}L${x} ${from}L${x + 4} ${from + 6}M${x - 4} ${to - 6}L${x} ${to}L${x + 4} ${to - 6}`
  return (
    <>
      <rect class="sketch__between" x={left} y={from} width={x + 8 - left} height={to - from} />
      <path class="sketch__span" d={`M${left - 2} ${from}H${x + 12}M${left - 2} ${to}H${x + 12}${arrows}`} />
    </>
  )
}

function teeth(x: number, into: number, from: number, to: number): string {
  let path = ''
  for (let y = from; y + 4 <= to + 0.1; y += 4) path += `M${x} ${y}L${x + into} ${y + 2}L${x} ${y + 4}`
  return path
}
