type Server = typeof import('@gripbook/server')

/** The port is taken, may not be opened, is no port of this machine. */
const LISTENING: Record<string, string> = {
  EADDRINUSE: 'Something else listens on this port already: choose another one with --port.',
  EACCES: 'This user may not open this port, or not this file: choose a port above 1023, or look at the file’s rights.',
  EADDRNOTAVAIL: 'This machine has no such address.',
}

/** What kept the server, a backup or a check from working, in words, when a person can put it right; null for a fault of Gripbook. */
export function serverFaultText(error: unknown, { DatabaseError, CertificateError }: Server): string | null {
  if (error instanceof DatabaseError || error instanceof CertificateError) return error.message
  const { code } = error as { code?: string }
  return (code !== undefined && LISTENING[code]) || null
}
