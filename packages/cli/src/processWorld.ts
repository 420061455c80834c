import { mkdir, open, writeFile } from 'node:fs/promises'
import type { World } from './world.ts'

const USUAL_COLUMNS = 80

/** The world of a real process. A reader that closes the pipe early ends the printing, not the command. */
export function processWorld(process: NodeJS.Process): World {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (fault: NodeJS.ErrnoException) => {
      if (fault.code !== 'EPIPE') throw fault
    })
  }
  const plain = (process.env.NO_COLOR ?? '') !== '' || process.env.TERM === 'dumb'
  return {
    readFile: readAtMost,
    writeFile: (path, text) => writeFile(path, text),
    writeBytes: (path, bytes) => writeFile(path, bytes),
    makeDirectory: async (path) => {
      await mkdir(path, { recursive: true })
    },
    out: (text) => {
      process.stdout.write(text)
    },
    err: (text) => {
      process.stderr.write(text)
    },
    today: () => dayOf(new Date()),
    env: process.env,
    stopAsked: () => stopAsked(process),
    watched: process.stderr.isTTY === true && process.env.TERM !== 'dumb',
    columns: process.stdout.columns || USUAL_COLUMNS,
    colour: process.stdout.isTTY === true && !plain,
  }
}

function stopAsked(process: NodeJS.Process): Promise<void> {
  return new Promise((done) => {
    let asked = false
    for (const signal of ['SIGINT', 'SIGTERM'] as const) {
      process.on(signal, () => {
        if (asked) process.exit(130)
        asked = true
        done()
      })
    }
  })
}

/** The day by the clock on the wall, not by that of Greenwich. */
function dayOf(date: Date): string {
  const two = (part: number): string => String(part).padStart(2, '0')
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`
}

async function readAtMost(path: string, atMost: number): Promise<Uint8Array> {
  const file = await open(path, 'r')
  try {
    const pieces: Uint8Array[] = []
    for (let left = atMost + 1; left > 0; ) {
      const piece = new Uint8Array(Math.min(left, 1 << 16))
      const { bytesRead } = await file.read(piece, 0, piece.length, null)
      if (bytesRead === 0) break
      pieces.push(piece.subarray(0, bytesRead))
      left -= bytesRead
    }
    return new Uint8Array(Buffer.concat(pieces))
  } finally {
    await file.close()
  }
}
