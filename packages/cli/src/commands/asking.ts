import { readOptions } from '../options.ts'
import { STATUS, type World } from '../world.ts'
import type { Command } from './command.ts'

/** What a command was asked, its options read. */
export type Asked = {
  words: string[]
  values: ReadonlyMap<string, string>
  flags: ReadonlySet<string>
  world: World
  out: (text: string) => void
  /** Says what is wrong with what was asked; the exit status of that. */
  refuse: (why: string) => number
}

export type Asking = {
  name: string
  words: string
  help: string
  withValue: readonly string[]
  flags: readonly string[]
}

/** A command that reads its options, gives its help and refuses what it does not know before it is run. */
export function askedCommand(
  { name, words, help, withValue, flags }: Asking,
  run: (asked: Asked) => number | Promise<number>,
): Command {
  return {
    words,
    help,
    run(args, out, err, world) {
      const refuse = (why: string): number => {
        err(`${why}\n`)
        return STATUS.wrongInput
      }
      const read = readOptions(args, withValue, [...flags, '--help'])
      if (!read.ok) return refuse(`${read.why} See: gripbook ${name} --help`)
      if (!read.options.flags.has('--help')) return run({ ...read.options, world, out, refuse })
      out(help)
      return STATUS.right
    },
  }
}

/** The path of the one file that is asked about. `usage`: how the command is called with it. */
export type AskedOfFile = Omit<Asked, 'words'> & { path: string }

/** A command about one unit file. */
export function fileCommand(asking: Asking, usage: string, run: (asked: AskedOfFile) => Promise<number>): Command {
  return askedCommand(asking, ({ words, ...asked }) => {
    const [path, ...more] = words
    if (path === undefined) return asked.refuse(`Which file? ${usage}`)
    if (more.length > 0) return asked.refuse(oneFileOnly(more[0]!))
    return run({ ...asked, path })
  })
}

/** Prints an answer: with `--json` as JSON under the name and version of its form, else in words. */
export function tell({ flags, out }: Pick<Asked, 'flags' | 'out'>, form: string, answer: object, words: string): void {
  out(flags.has('--json') ? `${JSON.stringify({ gripbook: form, ...answer }, null, 2)}\n` : words)
}

export function oneFileOnly(further: string): string {
  return `One file at a time: ${JSON.stringify(further)} is one too many.`
}
