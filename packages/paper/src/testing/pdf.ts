/** What two readers of PDF that know nothing of each other, poppler and MuPDF, make of a document. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** Why a test that needs the readers cannot run here, or null. */
export function whyNoReaders(): string | null {
  const missing = ['pdftoppm', 'mutool'].filter((tool) => spawnSync(tool, ['-v']).error !== undefined)
  return missing.length === 0 ? null : 'no reader of PDF here: apt-get install poppler-utils mupdf-tools'
}

function withFile<T>(bytes: Uint8Array, use: (path: string, folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'paper-'))
  try {
    const path = join(folder, 'a.pdf')
    writeFileSync(path, bytes)
    return use(path, folder)
  } finally {
    rmSync(folder, { recursive: true })
  }
}

function run(tool: string, args: string[]): Buffer {
  const { status, stdout, stderr, error } = spawnSync(tool, args, { maxBuffer: 1 << 28 })
  if (status !== 0) throw new Error(`${tool}: ${error?.message ?? stderr.toString()}`)
  // A reader that had to mend or guess says so here.
  if (/error|warning: (?!ICC)/i.test(stderr.toString())) throw new Error(`${tool} says: ${stderr}`)
  return stdout
}

/** All text in reading order, by poppler. */
export function textOf(bytes: Uint8Array, page?: number): string {
  const pages = page === undefined ? [] : ['-f', String(page), '-l', String(page)]
  return withFile(bytes, (path) => run('pdftotext', [...pages, path, '-']).toString())
}

/** All text, by MuPDF. */
export function otherTextOf(bytes: Uint8Array): string {
  return withFile(bytes, (path) => run('mutool', ['draw', '-q', '-F', 'txt', path]).toString())
}

/** The fields of pdfinfo: "Tagged", "Title", "Pages", … */
export function infoOf(bytes: Uint8Array): Record<string, string> {
  const lines = withFile(bytes, (path) => run('pdfinfo', [path]).toString()).split('\n')
  return Object.fromEntries(
    lines.map((line) => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 1).trim()]),
  )
}

/** What a screen reader walks through, with its texts. */
export function structureOf(bytes: Uint8Array): string {
  return withFile(bytes, (path) => run('pdfinfo', ['-struct-text', path]).toString())
}

export type Picture = { width: number; height: number /** 0 black to 255 white, row after row. */; grey: Uint8Array }

/** One page, counted from 1, as pixels: by poppler, or by MuPDF. */
export function pictureOf(
  bytes: Uint8Array,
  page: number,
  dotsPerInch: number,
  reader: 'poppler' | 'mupdf' = 'poppler',
): Picture {
  return withFile(bytes, (path, folder) => {
    const out = join(folder, 'page')
    const [n, dpi] = [String(page), String(dotsPerInch)]
    if (reader === 'poppler') run('pdftoppm', ['-gray', '-singlefile', '-f', n, '-l', n, '-r', dpi, path, out])
    else run('mutool', ['draw', '-q', '-c', 'gray', '-r', dpi, '-o', `${out}.pgm`, path, n])
    return readPgm(readFileSync(`${out}.pgm`))
  })
}

/** @source netpbm, pgm format: "P5", width, height and greatest value as text, then the pixels */
function readPgm(file: Uint8Array): Picture {
  const head = /^P5\s+(?:#[^\n]*\n)*(\d+)\s+(\d+)\s+255\s/.exec(Buffer.from(file.subarray(0, 200)).toString('latin1'))
  if (!head) throw new Error('no greyscale picture')
  return { width: Number(head[1]), height: Number(head[2]), grey: file.subarray(head[0].length) }
}

export type Circle = { x: number; y: number; radius: number }

const MM = 25.4 / 72

/**
 * Every circle that is drawn in outline and lies whole inside what is shown on a page, mm from the page's upper left corner, by MuPDF's list of what it
 * draws: poppler moves thin lines to whole pixels.
 */
export function circlesOn(bytes: Uint8Array, page: number): Circle[] {
  const trace = withFile(bytes, (path) => run('mutool', ['trace', path, String(page)]).toString())
  const circles: Circle[] = []
  // Boxes that clip what follows, innermost last; a circle is shown where it lies in all of them.
  const clips: Places[] = []
  for (const [, kind, head, body] of trace.matchAll(
    /<(clip_path|stroke_path|pop_clip)\b([^>]*)>(?:([\s\S]*?)<\/\1>)?/g,
  )) {
    if (kind === 'pop_clip') clips.pop()
    else if (kind === 'clip_path') clips.push(placesOf(head!, body!))
    else if (/^\s*<moveto[^>]*>\s*(?:<curveto[^>]*>\s*){4}<closepath/.test(body ?? '')) {
      const on = placesOf(head!, body!)
      const isShown = clips.every(
        (clip) => on.left >= clip.left && on.right <= clip.right && on.top >= clip.top && on.bottom <= clip.bottom,
      )
      if (isShown)
        circles.push({ x: (on.left + on.right) / 2, y: (on.top + on.bottom) / 2, radius: (on.right - on.left) / 2 })
    }
  }
  return circles
}

type Places = { left: number; right: number; top: number; bottom: number }

/** The box, mm, around the places that a path goes through. */
function placesOf(head: string, body: string): Places {
  const [a, b, c, d, e, f] = /transform="([^"]+)"/.exec(head)![1]!.split(' ').map(Number) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  const places = [...body.matchAll(/ (?:x|x3)="([-\d.]+)" (?:y|y3)="([-\d.]+)"/g)].map(
    ([, x, y]) => [Number(x), Number(y)] as const,
  )
  const xs = places.map(([x, y]) => (a * x + c * y + e) * MM)
  const ys = places.map(([x, y]) => (b * x + d * y + f) * MM)
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) }
}
