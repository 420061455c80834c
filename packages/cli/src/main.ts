import { nearestName } from '@gripbook/record'
import { backupCommand } from './commands/backup.ts'
import { boardCommand } from './commands/board.ts'
import { checkCommand } from './commands/check.ts'
import type { Command } from './commands/command.ts'
import { jointCommand } from './commands/joint.ts'
import { placeCommand } from './commands/place.ts'
import { recordCommand } from './commands/record.ts'
import { restoreCommand } from './commands/restore.ts'
import { serveCommand } from './commands/serve.ts'
import { stepsCommand } from './commands/steps.ts'
import { tightenCommand } from './commands/tighten.ts'
import { VERSION } from './version.ts'
import { STATUS, type World } from './world.ts'

const COMMANDS: Record<string, Command> = {
  place: placeCommand,
  joint: jointCommand,
  tighten: tightenCommand,
  steps: stepsCommand,
  board: boardCommand,
  record: recordCommand,
  serve: serveCommand,
  backup: backupCommand,
  restore: restoreCommand,
  check: checkCommand,
}

const HELP = `gripbook: which bolt belongs in which hole, and why

${Object.values(COMMANDS)
  .map(({ words }) => `  gripbook ${words}`)
  .join('\n')}
  gripbook help [COMMAND]
  gripbook --version

The service manual rules; what Gripbook computes is a check on it.
`

/**
 * Runs one command line, without the program's own name, and gives the exit status: 0 answered and nothing wrong found, 1 answered and
 * something is wrong, 2 the input is wrong, 3 Gripbook failed. Never throws.
 */
export async function main(args: string[], world: World): Promise<number> {
  try {
    return await answered(args, world)
  } catch (fault) {
    const what = fault instanceof Error ? fault.message : String(fault)
    world.err(`This is a fault in Gripbook, not in your file: ${what.replace(/\s+/g, ' ').slice(0, 300)}\n`)
    return STATUS.failed
  }
}

async function answered(args: string[], world: World): Promise<number> {
  const [word, ...rest] = args
  if (word === undefined || word === 'help' || word === '--help' || word === '-h') return help(rest[0], world)
  if (word === '--version' || word === '-v') {
    world.out(`gripbook ${VERSION}\n`)
    return STATUS.right
  }
  const command = Object.hasOwn(COMMANDS, word) ? COMMANDS[word] : undefined
  return command ? command.run(rest, world.out, world.err, world) : unknownWord(word, world)
}

function help(word: string | undefined, world: World): number {
  if (word !== undefined && !Object.hasOwn(COMMANDS, word)) return unknownWord(word, world)
  world.out(word === undefined ? HELP : COMMANDS[word]!.help)
  return STATUS.right
}

function unknownWord(word: string, world: World): number {
  const near = nearestName(word, [...Object.keys(COMMANDS), 'help', '--version', '--help'])
  world.err(
    `${JSON.stringify(word)} is not a command of Gripbook.${near ? ` Did you mean "${near}"?` : ''} See: gripbook help\n`,
  )
  return STATUS.wrongInput
}
