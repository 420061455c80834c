/** The command from source, for tests that need a process of their own. */
import { main } from '../main.ts'
import { processWorld } from '../processWorld.ts'

process.exitCode = await main(process.argv.slice(2), processWorld(process))
