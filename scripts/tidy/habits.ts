/** What may stand in a file: no clock and no chance in the sums, no test switched off, no file too long, nothing put off, no path of one machine. */
import { blank } from './blank.ts'
import { everywhere, type HouseFault, isCode, isTest, type TreeFile } from './tree.ts'

/** Clock, chance and terminal are handed in: the same input always gives the same answer. */
const HANDED_IN = /\bMath\.random\b|\bDate\.now\b|\bnew\s+Date\b|\bperformance\.now\b|\bconsole\b/g

export function clockFaults(files: TreeFile[]): HouseFault[] {
  return files
    .filter(({ path }) => /^packages\/(engine|record|print|paper)\/src\//.test(path) && isCode(path) && !isTest(path))
    .flatMap(({ path, text }) =>
      everywhere(path, blank(text).bare, HANDED_IN, (found) => `${found}: clock, chance and terminal are handed in`),
    )
}

/** A test that skips by itself with words (`context.skip('no such tool')`) says so in the run; one switched off in the source does not. */
const SWITCHED_OFF = /\b(?:x(?:it|test|describe)\b|(?:it|test|describe|suite)(?:\.\w+)*\.(?:skip|only|todo|fails)\b)/g

export function switchedOffFaults(files: TreeFile[]): HouseFault[] {
  return files
    .filter(({ path }) => isTest(path))
    .flatMap(({ path, text }) =>
      everywhere(path, blank(text).bare, SWITCHED_OFF, (found) => `${found}: a test runs, or it is not there`),
    )
}

const MOST_LINES = 450
const REASON = /\bLong because \S/

export function lengthFaults(files: TreeFile[]): HouseFault[] {
  return files
    .filter(({ path, text }) => isCode(path) && !REASON.test(text))
    .map(({ path, text }) => ({ path, lines: text.trimEnd().split('\n').length }))
    .filter(({ lines }) => lines > MOST_LINES)
    .map(({ path, lines }) => ({
      path,
      line: lines,
      why: `${lines} lines, at most ${MOST_LINES}: split it, or say at its top "Long because …"`,
    }))
}

const PUT_OFF = new RegExp(`\\b(?:${['TO', 'FIX'].map((start, i) => start + ['DO', 'ME'][i]).join('|')})\\b`, 'g')
const MACHINE_PATH = /(?<=^|[\s'"`(=:,[])\/(?:work|home|root|tmp|Users)\/[\w.-]*/gm

export function textFaults(files: TreeFile[]): HouseFault[] {
  return files
    .filter(({ path }) => !isLock(path))
    .flatMap(({ path, text }) => [
      ...everywhere(path, text, PUT_OFF, (found) => `${found}: do it, or write it where work is planned`),
      ...everywhere(path, text, MACHINE_PATH, (found) => `${found}: a path of one machine`),
    ])
}

const ADDRESS = /"resolved":\s*"\w+:[^"]*"|^registry\s*=.*$/gm

export function lockFaults(files: TreeFile[]): HouseFault[] {
  return files
    .filter(({ path }) => isLock(path) || path.endsWith('.npmrc'))
    .flatMap(({ path, text }) =>
      everywhere(
        path,
        text,
        ADDRESS,
        () => 'the address of a registry: set omit-lockfile-registry-resolved and lock again',
      ),
    )
}

function isLock(path: string): boolean {
  return path.endsWith('package-lock.json')
}
