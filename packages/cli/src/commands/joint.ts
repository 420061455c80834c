import { type JointAnswer, joint, writeQuantity } from '@gripbook/engine'
import { readOptions } from '../options.ts'
import { jointText } from '../text/jointText.ts'
import { STATUS, type World } from '../world.ts'
import { JOINT_OPTIONS, type JointAsked, jointAsked, OptionFault } from './jointOptions.ts'

const WORDS = 'joint --thread SIZE --torque TORQUE [--class MARK] [--json]'

const HELP = `gripbook joint --thread M6 --class 8.8 --torque "20 lbf·ft"

Says what a torque does to a bolt, to the thread of its hole and to the seat
under its head: clamp load, how much of each is used, and whether the torque is
usual for this size.

  --thread SIZE       M6, M8x1, 5/16-18 UNC
  --torque TORQUE     "10 N·m", "20 lbf·ft", "9 to 11 N·m"
  --class MARK        head mark: 8.8, 10.9, A2-70, "grade 5", or "no mark":
                      that is taken as the weakest usual class
  --material NAME     what the hole is cut in: cast aluminium, steel, grey iron
  --seat NAME         what the head sits on, where it is another material
  --engagement LENGTH full thread in full thread: "9 mm", "1.5 d"
  --friction STATE    dry, oiled, thread sealant, thread-lock, coated, unknown;
                      or a coefficient: 0.12, 0.10-0.16
  --head HEAD         flange, socket, "10 mm", "EN 1665"; the plain hexagon is
                      taken where none is given
  --drag TORQUE       torque felt while turning before the head seats; added on
                      the wrench
  --extension E/L     crow-foot reach and wrench length, 50/300; at an angle
                      50/300@90
  --json              the whole answer as JSON

Ends with 0 when the torque is in the usual band, 1 when it is not, 2 when an
option cannot be used.
The manual's figure rules; this is a check on it.
`

/** What a stated torque does to a joint. */
export const jointCommand = {
  words: WORDS,
  help: HELP,
  run(
    args: string[],
    out: (text: string) => void,
    err: (text: string) => void,
    world?: Pick<World, 'columns' | 'colour'>,
  ): number {
    const read = readOptions(args, JOINT_OPTIONS, ['--json', '--help'])
    if (!read.ok) return refuse(err, `${read.why} See: gripbook joint --help`)
    if (read.options.flags.has('--help')) {
      out(HELP)
      return STATUS.right
    }
    const [word] = read.options.words
    if (word !== undefined)
      return refuse(
        err,
        `${JSON.stringify(word)} stands without an option. A value with blanks needs quotes: --torque "20 lbf·ft".`,
      )
    let asked: JointAsked
    try {
      asked = jointAsked(read.options.values)
    } catch (fault) {
      if (fault instanceof OptionFault) return refuse(err, fault.message)
      throw fault
    }
    const answer = answered(asked)
    const stated = writeQuantity(asked.stated, 'torque')
    out(
      read.options.flags.has('--json')
        ? `${JSON.stringify({ ...answer, stated }, null, 2)}\n`
        : jointText(answer, stated, { columns: world?.columns ?? 80, colour: world?.colour ?? false }),
    )
    return answer.verdicts.every(({ verdict }) => verdict === 'in the usual band') ? STATUS.right : STATUS.wrongFound
  },
}

function answered({ wanted, unitSlip }: JointAsked): JointAnswer {
  const answer = joint(wanted)
  if (!unitSlip || !answer.verdicts.some(({ verdict }) => verdict === 'not for this size')) return answer
  return {
    ...answer,
    cautions: [
      'Look in the book again whether it says lbf·ft or lbf·in: the one is twelve times the other.',
      ...answer.cautions,
    ],
  }
}

function refuse(err: (text: string) => void, why: string): number {
  err(`${why}\n`)
  return STATUS.wrongInput
}
