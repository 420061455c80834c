import { type JointAnswer, joint, writeQuantity } from '@gripbook/engine'
import { readOptions } from '../options.ts'
import { benchText, jointText } from '../text/jointText.ts'
import { STATUS, type World } from '../world.ts'
import { type BenchAnswer, benchAnswer, benchWrong } from './benchChecks.ts'
import { JOINT_OPTIONS, OptionFault } from './jointOptionFault.ts'
import { type JointAsked, jointAsked, type TorqueAsked } from './jointOptions.ts'

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

The wrench: is it fit for this torque today
  --wrench RANGE      range on its label: "4 to 20 N·m"
  --calibrated DAY    last calibration, 2026-03-01; it counts for 12 months, or
  --calibrated-for N  for so many months
  --deviation SHARE   what its certificate states: "3 %"; the class limits of
                      ISO 6789 are taken where none is given
  --swivel DEGREES    angle of a swivel between wrench and bolt

Without a torque, or beside it
  --angle DEGREES     turned after snug, or after the torque: clamp load that it
                      adds. Needs --material and
  --clamped LENGTH    thickness of all that is clamped under the head
  --shank LENGTH      part of the bolt in it without thread, where known
  --stick-out LENGTH  bolt length past the joint face: turns to expect until
                      the head seats
  --mouth LENGTH      depth before the first full thread; none where not given
  --tip LENGTH        tip without full thread; 1 to 2 pitches where not given
  --bottom LENGTH     depth of the hole from the joint face to its bottom
  --turns N           turns counted, half a turn in doubt, with
  --rest HOW          "hard stop", "tight all the way", springy or
                      "head on its seat": why the bolt stopped
  --new-length LENGTH of a new bolt: "45 ± 0.05 mm", "nominal 45 mm", "at most
                      45.5 mm"; with
  --length-now LENGTH as measured: is the bolt stretched
  --socket SIZE       across flats, "10 mm": the heads it fits; needs no thread

Ends with 0 when the torque is in the usual band and nothing is wrong. Ends with
1 when it is not, or a wrench is not fit, a swivel takes the torque out of the
band, an angle yields the bolt, a bolt is stretched, too long for its hole or
stopped early. Ends with 2 when an option cannot be used. A torque that an angle
follows may be low.
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
    world: Pick<World, 'columns' | 'colour' | 'today'>,
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
    const answer = asked.torque && answered(asked.torque)
    const bench = benchAnswer(asked, answer, world.today)
    out(read.options.flags.has('--json') ? asJson(asked, answer, bench) : asText(asked, answer, bench, world))
    return benchWrong(bench) || (answer && torqueWrong(asked, answer)) ? STATUS.wrongFound : STATUS.right
  },
}

function answered({ wanted, unitSlip }: TorqueAsked): JointAnswer {
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

/** A torque that an angle follows is only the start and may be low. */
function torqueWrong({ bench }: JointAsked, { verdicts }: JointAnswer): boolean {
  return verdicts.some(({ verdict }) => verdict !== 'in the usual band' && !(bench.angle && verdict === 'low'))
}

function asJson({ thread, torque }: JointAsked, answer: JointAnswer | undefined, bench: BenchAnswer): string {
  const whole =
    answer && torque
      ? { ...answer, ...bench, stated: writeQuantity(torque.stated, 'torque') }
      : { gripbook: 'joint/1', ...(thread ? { thread: thread.name } : {}), ...bench }
  return `${JSON.stringify(whole, null, 2)}\n`
}

function asText(
  { thread, torque }: JointAsked,
  answer: JointAnswer | undefined,
  bench: BenchAnswer,
  screen: Pick<World, 'columns' | 'colour'>,
): string {
  return answer && torque
    ? jointText(answer, bench, writeQuantity(torque.stated, 'torque'), screen)
    : benchText(bench, thread ? `${thread.name}, no torque stated` : 'No thread stated', screen)
}

function refuse(err: (text: string) => void, why: string): number {
  err(`${why}\n`)
  return STATUS.wrongInput
}
