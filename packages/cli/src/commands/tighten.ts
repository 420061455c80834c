import { planTightening, type TighteningAsked, type TighteningProgress } from '@gripbook/engine'
import { evenEnough } from '../text/spreadWords.ts'
import { tighteningText } from '../text/tighteningText.ts'
import { readUnitFrom, tellFaults } from '../unitFrom.ts'
import { STATUS, type World } from '../world.ts'
import { fileCommand } from './asking.ts'
import { faceToTighten } from './tightenFace.ts'
import { readPasses, readSpread } from './tightenOptions.ts'

/** How uneven the clamp may be unless --spread says otherwise: common practice, no source. */
const USUAL_SPREAD = 0.05

const HELP = `gripbook tighten FILE [--face ID] [--passes 30,60,100] [--spread 5]
                 [--no-search] [--json]

Says in which order and in how many passes a cover is tightened, with what every
bolt holds after it: a bolt that is tightened lets the cover sink, and the bolts
beside it lose some of theirs. The manual's order, where the file states one,
rules; the others stand beside it. The face needs a cover, a bed and the places
of its holes: docs/unit-file.md, Tightening.

  --face ID      this face; else the only one that has a cover
  --passes LIST  shares of the final torque in per cent, rising, the last 100;
                 30,60,100 where not given. A stated order keeps its own
  --spread N     how uneven the clamp may be in the end, in per cent: greatest
                 less least over the mean. Taken as 5 where not given
  --no-search    only the patterns, no search for a better order
  --json         the whole answer as JSON, with the loads after every step

Ends with 0 when answered, 1 when --spread is given and the advised order leaves
the clamp more uneven than that, 2 when the input is wrong (told on standard
error, nothing written), 3 when Gripbook failed.
`

/** In which order a cover is tightened. */
export const tightenCommand = fileCommand(
  {
    name: 'tighten',
    words: 'tighten FILE [--face ID] [--passes 30,60,100] [--json]',
    help: HELP,
    withValue: ['--face', '--passes', '--spread'],
    flags: ['--no-search', '--json'],
  },
  'gripbook tighten FILE',
  async ({ path, values, flags, out, world, refuse }) => {
    const passes = values.get('--passes')
    const shares = passes === undefined ? undefined : readPasses(passes)
    if (shares?.ok === false) return refuse(shares.why)
    const wanted = values.get('--spread')
    const spread = wanted === undefined ? undefined : readSpread(wanted)
    if (spread?.ok === false) return refuse(spread.why)
    const unit = await readUnitFrom(path, world)
    if (!unit) return STATUS.wrongInput
    const chosen = faceToTighten(unit, values.get('--face'))
    if (!chosen.ok) return refuse(chosen.why)

    const asked: TighteningAsked = {
      ...(shares === undefined ? {} : { shares: shares.value }),
      ...(flags.has('--no-search') ? { search: false } : {}),
    }
    const progress = progressOn(world)
    const planned = planTightening(unit, chosen.face, asked, progress.tell)
    progress.wipe()
    if (!planned.ok) {
      tellFaults(path, planned.faults, world)
      return STATUS.wrongInput
    }
    const answer = planned.value
    const most = spread?.value ?? USUAL_SPREAD
    out(flags.has('--json') ? `${JSON.stringify(answer, null, 2)}\n` : tighteningText(unit, answer, most, world))
    const advised = answer.orders[answer.advice.order]!
    return spread !== undefined && !evenEnough(advised, most) ? STATUS.wrongFound : STATUS.right
  },
)

const DOING: Record<TighteningProgress['what'], string> = {
  plate: 'bending the cover',
  orders: 'tightening in one order after the other',
  search: 'looking for a better order',
}

/** One line on a watched terminal, written over and wiped in the end; elsewhere nothing. */
function progressOn({ err, watched }: World): { tell: (progress: TighteningProgress) => void; wipe: () => void } {
  if (!watched) return { tell: () => {}, wipe: () => {} }
  let shown = ''
  return {
    tell: ({ what, done }) => {
      const line = `${DOING[what]}: ${Math.floor(done * 100)} %`
      if (line !== shown) err(`\r\u001b[K${line}`)
      shown = line
    },
    wipe: () => {
      if (shown !== '') err('\r\u001b[K')
    },
  }
}
