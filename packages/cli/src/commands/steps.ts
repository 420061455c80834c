import { type StepsAnswer, steps } from '@gripbook/engine'
import { type FileFault, nearestName } from '@gripbook/record'
import { readOptions } from '../options.ts'
import { stepsText } from '../text/stepsText.ts'
import { readUnitFrom, tellFaults } from '../unitFrom.ts'
import { STATUS } from '../world.ts'
import type { Command } from './command.ts'

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
export const stepsCommand: Command = {
  words: 'steps FILE [--tool NAME] [--side WORDS] [--json]',
  help: HELP,
  async run(args, out, err, world) {
    const refuse = (why: string) => {
      err(`${why}\n`)
      return STATUS.wrongInput
    }
    const read = readOptions(args, ['--tool', '--side'], ['--json', '--help'])
    if (!read.ok) return refuse(`${read.why} See: gripbook steps --help`)
    const { words, values, flags } = read.options
    if (flags.has('--help')) {
      out(HELP)
      return STATUS.right
    }
    const [path, ...more] = words
    if (path === undefined) return refuse('Which file? gripbook steps FILE')
    if (more.length > 0) return refuse(`One file at a time: ${JSON.stringify(more[0])} is one too many.`)
    const unit = await readUnitFrom(path, world)
    if (!unit) return STATUS.wrongInput
    const [tool, side] = [values.get('--tool'), values.get('--side')]
    const answer = steps(unit, { ...(tool === undefined ? {} : { tool }), ...(side === undefined ? {} : { side }) })
    const faults = nameFaults(answer)
    if (faults.length > 0) {
      tellFaults(path, faults, world)
      return STATUS.wrongInput
    }
    out(flags.has('--json') ? `${JSON.stringify(answer, null, 2)}\n` : stepsText(unit, answer, world))
    const unready = answer.notReady.some(({ need }) => need.ready === false)
    return answer.feasible && !unready ? STATUS.right : STATUS.wrongFound

    /** Names of jobs that lead nowhere, each with its place in the file. */
    function nameFaults({ unknownNames, jobs }: StepsAnswer): FileFault[] {
      const known = [...jobs.map((job) => job.id), ...unit!.faces.map((face) => face.id)]
      return unknownNames.map(({ job, field, name }): FileFault => {
        const at = (unit!.jobs ?? []).findIndex(({ id }) => id === job)
        const stated = unit!.jobs?.[at]
        const list = (field === 'until' ? stated?.window?.until : stated?.[field]) ?? []
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
  },
}
