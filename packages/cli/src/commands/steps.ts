import { type StepsAnswer, steps, type Unit } from '@gripbook/engine'
import { type FileFault, nearestName } from '@gripbook/record'
import { stepsText } from '../text/stepsText.ts'
import { readUnitFrom, tellFaults } from '../unitFrom.ts'
import { STATUS } from '../world.ts'
import { fileCommand } from './asking.ts'

const HELP = `gripbook steps FILE [--tool NAME] [--side WORDS] [--json]

Says in which order a unit goes back together: what must be in before something
covers it, what soaks, what is done while sealant is open, with the fewest
changes of tools and turns of the unit. Also what is not ready, the chance of
closing in time, and what each closing step would bury as things stand. The
order comes from faces, visits, parts and tools; "jobs" in the file changes it:
docs/unit-file.md, The order of work.

  --tool NAME    the tool in the hand now
  --side WORDS   how the unit lies now
  --json         the whole answer as JSON

Ends with 0 when answered, 1 when no order keeps all of it or something is said
not to be ready, 2 when the input is wrong (told on standard error, nothing
written), 3 when Gripbook failed.
`

/** In which order the work is done. */
export const stepsCommand = fileCommand(
  {
    name: 'steps',
    words: 'steps FILE [--tool NAME] [--side WORDS] [--json]',
    help: HELP,
    withValue: ['--tool', '--side'],
    flags: ['--json'],
  },
  'gripbook steps FILE',
  async ({ path, values, flags, out, world }) => {
    const unit = await readUnitFrom(path, world)
    if (!unit) return STATUS.wrongInput
    const [tool, side] = [values.get('--tool'), values.get('--side')]
    const answer = steps(unit, { ...(tool === undefined ? {} : { tool }), ...(side === undefined ? {} : { side }) })
    const faults = nameFaults(unit, answer)
    if (faults.length > 0) {
      tellFaults(path, faults, world)
      return STATUS.wrongInput
    }
    out(flags.has('--json') ? `${JSON.stringify(answer, null, 2)}\n` : stepsText(unit, answer, world))
    const unready = answer.notReady.some(({ need }) => need.ready === false)
    return answer.feasible && !unready ? STATUS.right : STATUS.wrongFound
  },
)

/** Names of jobs that lead nowhere, each with its place in the file. */
function nameFaults({ faces, jobs: stated = [] }: Unit, { unknownNames, jobs }: StepsAnswer): FileFault[] {
  const known = [...jobs, ...faces].map(({ id }) => id)
  return unknownNames.map(({ job, field, name }): FileFault => {
    const at = stated.findIndex(({ id }) => id === job)
    const list = (field === 'until' ? stated[at]?.window?.until : stated[at]?.[field]) ?? []
    const near = nearestName(name, known)
    return {
      code: 'no-such-name',
      what: 'job',
      name,
      path: ['jobs', at, ...(field === 'until' ? ['window', 'until'] : [field]), list.indexOf(name)],
      ...(near === undefined ? {} : { near }),
    }
  })
}
