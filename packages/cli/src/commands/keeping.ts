/** What the commands that keep the shop have in common: options, opening and closing what they work on, faults in words. */
import { randomBytes } from 'node:crypto'
import type { Shop } from '@gripbook/server'
import { type Asked, type Asking, askedCommand } from './asking.ts'
import type { Command } from './command.ts'
import { serverFaultText } from './serverFault.ts'

export type Server = typeof import('@gripbook/server')

/** A command that works on the record. The server is loaded only here, so that the others start quickly. */
export function keepingCommand({ run, ...asking }: Asking & { run: Run }): Command {
  return askedCommand(asking, async (asked) => {
    const server = await import('@gripbook/server')
    try {
      return await run(asked, server)
    } catch (error) {
      const said = error instanceof NoRecord ? error.message : serverFaultText(error, server)
      if (said === null) throw error
      return asked.refuse(said)
    }
  })
}

type Run = (asked: Asked, server: Server) => Promise<number>

/** Opens the record that `--data` or the settings name, for the time of `work`. */
export async function withShop<T>(
  { values, world }: Asked,
  server: Server,
  work: (shop: Shop) => Promise<T>,
): Promise<T> {
  const dataFolder = values.get('--data') ?? server.dataFolder(world.env)
  const open = await server.openShop({
    env: world.env,
    dataFolder,
    secure: false,
    clock: Date.now,
    random: randomBytes,
    failed: () => {},
  })
  try {
    return await work(open.shop)
  } finally {
    await open.close()
  }
}

class NoRecord extends Error {}

/** The same for what is of use only where a record is: a mistyped folder is told, not made into an empty record. */
export async function withRecord<T>(asked: Asked, server: Server, work: (shop: Shop) => Promise<T>): Promise<T> {
  const { values, world } = asked
  const folder = values.get('--data') ?? server.dataFolder(world.env)
  if (!world.env.GRIPBOOK_DATABASE_URL?.trim() && !(await server.holdsRecord(folder)))
    throw new NoRecord(`There is no record in ${folder}. Name its folder with --data, or set GRIPBOOK_DATA.`)
  return withShop(asked, server, work)
}

/** Whose signature a file carries. */
export function signedWords(key: string | null): string {
  return key === null ? 'Nobody signed it.' : `Signed with the key ${key}.`
}

/** `3 entries`, `1 entry`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`
}
