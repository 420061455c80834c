/** What is asked about the tightening of a face, and what is answered. Plain data, the same for the command line, the page and paper. */

/** How an order came about. The words for each are with whoever shows it. */
export type OrderKind =
  /** The manual's, as entered. It rules. */
  | 'stated'
  /** Opposite pairs, halving the angle: round flanges. */
  | 'cross'
  /** From the middle outward, paired across the centre. */
  | 'spiral'
  /** From the middle of the long sides outward, crossing over: pans. */
  | 'rails'
  /** Corners first, then what lies between. */
  | 'corners'
  /** One after another round the edge. */
  | 'round'
  /** Searched for. */
  | 'found'

/** One turn of the wrench: which bolt, to which share of its target, and what every bolt holds after it, N, in the order of `holes`. */
export type TighteningStep = {
  hole: string
  share: number
  /** 1, 2, 3 …: the pass that this step belongs to. */
  pass: number
  /** False when the wrench clicked at once: the bolt held its share already. */
  moved: boolean
  loads: number[]
}

export type OrderAnswer = {
  kind: OrderKind
  /** In plain English, for files and logs. */
  name: string
  passes: { share: number; visit: number; sequence: string[] }[]
  steps: TighteningStep[]
  /** (greatest − least)/mean of the loads after the last step, each as a share of its bolt's target. */
  spread: number
  /** Spread after each pass. */
  spreads: number[]
  /** The spread at the soft end, at the middle and at the stiff end of the bed. One figure when the bed is one figure. */
  overBed: number[]
  /** Greatest departure from straight, mm, along the stated lines; with none stated, along the lines between any two bolts. */
  bow: number
  /** The same for each stated line. */
  bows: { name: string; bow: number }[]
  /** Way of the hand from bolt to bolt over all passes, mm. */
  travel: number
  /** Rounds at full torque after the passes until no bolt moves, and what is left then. */
  lastRounds: { count: number; still: boolean; loads: number[]; spread: number }
  /** After the passes, without last rounds, when the surfaces have settled; where the face states how rough they are. */
  settled?: { loads: number[]; spread: number }
}

export type Assumption =
  /** Always: plate theory on a casting ranks orders, it does not promise kN. */
  | { what: 'estimate' }
  /** Always: flat cover, no trapped sealant. That is why shops work from the middle outward. */
  | { what: 'flat' }
  /** Young's modulus or Poisson's ratio was not stated: aluminium. */
  | { what: 'aluminium' }
  /** A thickness was stated with a tolerance or as a range: the middle of it. */
  | { what: 'thickness' }
  /** Stiffness of these bolts was worked out from their size and grip. */
  | { what: 'bolt stiffness'; holes: string[] }
  /** Targets come from a torque at middling friction. */
  | { what: 'torque'; holes: string[] }
  /** Neither clamp nor torque is known: the usual torque of the size. */
  | { what: 'usual torque'; holes: string[] }
  /** Nothing is known, not even the thread: the same load for all, 1000 N. */
  | { what: 'unit load' }
  /** The bending length of plate and bed, mm, is below the thickness: bolts hardly feel each other, the theory says little. */
  | { what: 'thick'; bendingLength: number }
  /** The stated order never comes to these holes. */
  | { what: 'left out'; holes: string[] }
  /** The bed lifted off under the load; the loads shown count that. `share`: greatest change of a load against a bed that holds everywhere. */
  | { what: 'lift-off'; share: number }

/** Why an order is advised. */
export type Advice =
  | { why: 'stated'; order: number }
  /** The search found nothing truly better than a pattern that can be remembered; `found`: what it found, where that is not the same. */
  | { why: 'pattern'; order: number; found?: number }
  | { why: 'found'; order: number; against: number }

export type TighteningAnswer = {
  gripbook: 'tightening/1'
  face: string
  holes: string[]
  /** Sink in mm at hole i for 1 N at hole j, bed in contact everywhere. */
  compliance: number[][]
  /** What the compliance may be off by, as a share of its greatest term, from a coarser grid; and that grid's step in mm. */
  accuracy: { error: number; grid: number }
  bolts: { hole: string; target: number; stiffness: number; visit: number }[]
  bed: { soft: number; middle: number; stiff: number }
  /** The stated order first, if there is one; then the patterns that suit the outline; the found one last. */
  orders: OrderAnswer[]
  advice: Advice
  assumptions: Assumption[]
}

export type TighteningAsked = {
  /** Shares of the final torque, rising, the last 1. Unless stated 0.3, 0.6, 1. */
  shares?: number[]
  /** Search for a better order. True unless stated. */
  search?: boolean
}

/** What is being done, and how far it is (0 to 1). */
export type TighteningProgress = { what: 'plate' | 'orders' | 'search'; done: number }

/** How the cover lies under given loads: points of a grid, row by row from the lowest y, left to right; null off the cover. */
export type CoverMap = {
  /** Lower left point, mm, distance between points, and how many there are. */
  from: [number, number]
  step: number
  columns: number
  rows: number
  /** Pressure on the bed, MPa; 0 where it lifts off. */
  pressure: (number | null)[]
  /** Gap that opens, mm; 0 where it lies on the bed. */
  gap: (number | null)[]
  bows: { name: string; bow: number }[]
}
