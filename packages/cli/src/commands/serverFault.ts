type Server = typeof import('@gripbook/server')

/** What the machine says, in words: the port is taken, may not be opened; the file is not there. */
const MACHINE: Record<string, string> = {
  EADDRINUSE: 'Something else listens on this port already: choose another one with --port.',
  EACCES: 'This user may not open this port, or not this file: choose a port above 1023, or look at the file’s rights.',
  EADDRNOTAVAIL: 'This machine has no such address.',
  ENOENT: 'There is no such file or folder.',
  EISDIR: 'This is a folder, not a file.',
  ENOTDIR: 'A part of this path is a file, not a folder.',
  ENOSPC: 'The disk is full. Nothing that was there before was touched.',
  EROFS: 'This disk can only be read.',
}

/** What kept the server, a backup or a check from working, in words, when a person can put it right; null for a fault of Gripbook. */
export function serverFaultText(error: unknown, server: Server): string | null {
  const { BadArchive, BadZip, Damaged, FaultError, Faults, NotEmpty } = server
  if (error instanceof BadZip) return `The file is damaged or none that Gripbook has written: ${error.message}.`
  for (const kind of [BadArchive, Damaged, FaultError, Faults, NotEmpty])
    if (error instanceof kind) return error.message
  const { code, path, dest } = error as { code?: string; path?: string; dest?: string }
  const words = code === undefined ? undefined : MACHINE[code]
  if (words === undefined) return null
  // Of a file that was to get its name, the name is what was asked for.
  const about = dest ?? path
  return about === undefined ? words : `${about}: ${words}`
}
