/** Who may import whom. Imports only go up this list, so no cycle between packages can start. */
import { posix } from 'node:path'
import { blank } from './blank.ts'
import { type HouseFault, isCode, isTest, lineAt, type TreeFile } from './tree.ts'

/** What the code of a package may import besides its own files; tests may also import packages from outside the house. */
const MAY_IMPORT: Record<string, { ours: string[]; fromOutside: string[]; node: boolean }> = {
  engine: { ours: [], fromOutside: [], node: false },
  record: { ours: ['engine'], fromOutside: ['zod'], node: false },
  print: { ours: ['engine', 'record'], fromOutside: [], node: false },
  paper: { ours: ['engine', 'record', 'print'], fromOutside: ['pdfkit', 'uqr'], node: false },
  device: { ours: ['engine', 'record'], fromOutside: ['dexie'], node: false },
  web: {
    ours: ['engine', 'record', 'print', 'paper', 'device'],
    fromOutside: ['preact', 'highs', 'workbox-window', 'virtual:pwa-register'],
    node: false,
  },
  server: {
    ours: ['engine', 'record'],
    fromOutside: [
      '@fastify/helmet',
      '@fastify/rate-limit',
      '@fastify/static',
      '@fastify/swagger',
      'aws4fetch',
      'cookie',
      'fastify',
      'fastify-type-provider-zod',
      'kysely',
      'pg',
      'prom-client',
      'sharp',
      'uqr',
      'yauzl',
      'yazl',
      'zod',
    ],
    node: true,
  },
  cli: { ours: ['engine', 'record', 'print', 'paper', 'server'], fromOutside: ['highs'], node: true },
}

/** Runs where the package is built, and is no part of it. */
const HOW_IT_IS_BUILT = /^packages\/\w+\/vite\.config\.ts$/

const IMPORT = /\b(?:import|export)\b(?:[^'"`;]*?\bfrom)?\s*(['"])([^'"]+)\1|\bimport\s*\(\s*(['"])([^'"]+)\3/g

export function importFaults(files: TreeFile[]): HouseFault[] {
  return files.filter(({ path }) => isCode(path) && path.startsWith('packages/')).flatMap(faultsOf)
}

function faultsOf({ path, text }: TreeFile): HouseFault[] {
  const { code, bare } = blank(text)
  return [...code.matchAll(IMPORT)].flatMap((match) => {
    const isReal = bare.startsWith(match[0].slice(0, 6), match.index)
    const why = isReal ? whyNot(path, match[2] ?? match[4] ?? '') : undefined
    return why === undefined ? [] : [{ path, line: lineAt(text, match.index), why }]
  })
}

/** Why the file may not import this, or undefined when it may. */
function whyNot(path: string, wanted: string): string | undefined {
  const own = path.split('/')[1] ?? ''
  const may = MAY_IMPORT[own]
  if (may === undefined) return `the package ${own} stands in no import table: add it to scripts/tidy/imports.ts`
  if (wanted.startsWith('.')) {
    const target = posix.join(posix.dirname(path), wanted)
    return target.startsWith(`packages/${own}/`)
      ? undefined
      : `${wanted} leaves the package ${own}: import the other package by its name`
  }
  const ours = /^@gripbook\/([^/]+)(\/.+)?$/.exec(wanted)
  if (ours) {
    if (ours[2]) return `${wanted} reaches into a package: import @gripbook/${ours[1]} and export what is needed there`
    return may.ours.includes(ours[1] ?? '') ? undefined : `${own} may not import ${wanted}`
  }
  if (isTest(path) || HOW_IT_IS_BUILT.test(path)) return undefined
  if (wanted.startsWith('node:')) return may.node ? undefined : `${own} may not import ${wanted}: it runs anywhere`
  const name = nameOf(wanted)
  return may.fromOutside.includes(name) ? undefined : `${own} may not import ${wanted}`
}

/** The package's name in what is imported: `zod` of `zod/mini`, `@fastify/helmet` of itself. */
function nameOf(wanted: string): string {
  return wanted
    .split('/')
    .slice(0, wanted.startsWith('@') ? 2 : 1)
    .join('/')
}
