import type { World } from '../world.ts'

export type TestWorld = World & {
  said: { out: string; err: string }
  written: Map<string, string>
  writtenBytes: Map<string, Uint8Array>
  directories: string[]
}

/** A world of files in memory. A name that is not there is missing, as on a disk. */
export function testWorld(
  files: Record<string, string | Uint8Array> = {},
  screen: { columns?: number; colour?: boolean; watched?: boolean; today?: string } = {},
): TestWorld {
  const said = { out: '', err: '' }
  const written = new Map<string, string>()
  const writtenBytes = new Map<string, Uint8Array>()
  const directories: string[] = []
  return {
    said,
    written,
    writtenBytes,
    directories,
    readFile: async (path, atMost) => {
      const file = files[path]
      if (file === undefined) throw Object.assign(new Error('no such file'), { code: 'ENOENT' })
      const bytes = typeof file === 'string' ? new TextEncoder().encode(file) : file
      return bytes.subarray(0, atMost + 1)
    },
    writeFile: async (path, text) => {
      written.set(path, text)
    },
    writeBytes: async (path, bytes) => {
      writtenBytes.set(path, bytes)
    },
    makeDirectory: async (path) => {
      directories.push(path)
    },
    out: (text) => {
      said.out += text
    },
    err: (text) => {
      said.err += text
    },
    today: () => screen.today ?? '2026-06-01',
    env: {},
    stopAsked: () => Promise.resolve(),
    watched: screen.watched ?? false,
    columns: screen.columns ?? 80,
    colour: screen.colour ?? false,
  }
}
