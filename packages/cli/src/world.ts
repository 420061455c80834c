/** All that a command may touch. Handed in, so that tests run commands without a process. */
export type World = {
  /** At most `atMost` bytes of a file, and one more when there are more, so that nothing endless is read. Rejects as the file system does. */
  readFile: (path: string, atMost: number) => Promise<Uint8Array>
  writeFile: (path: string, text: string) => Promise<void>
  writeBytes: (path: string, bytes: Uint8Array) => Promise<void>
  /** Makes the directory and those above it, where they are not there. */
  makeDirectory: (path: string) => Promise<void>
  out: (text: string) => void
  err: (text: string) => void
  /** The day it is here, "2026-03-01". */
  today: () => string
  /** Settings of the process, `GRIPBOOK_…` among them. */
  env: Record<string, string | undefined>
  /** Resolves when the process is asked to stop (SIGINT, SIGTERM); asked a second time it ends at once. */
  stopAsked: () => Promise<void>
  /** Standard error is a terminal: how far a long sum is may be shown there. */
  watched: boolean
  columns: number
  colour: boolean
}

/** What a command ends with: answered and nothing wrong, answered and something is wrong, the input is wrong, Gripbook failed. */
export const STATUS = { right: 0, wrongFound: 1, wrongInput: 2, failed: 3 } as const
