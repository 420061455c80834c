import type { World } from '../world.ts'

/** One command word: `words` is what follows `gripbook`, `help` its page. `run` gives the exit status. */
export type Command = {
  words: string
  help: string
  run: (
    args: string[],
    out: (text: string) => void,
    err: (text: string) => void,
    world: World,
  ) => number | Promise<number>
}
