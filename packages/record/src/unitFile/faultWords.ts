import { sizeOf, type UnitName, unitsOf } from '@gripbook/engine'
import type { FileFault } from './fault.ts'
import { pathText } from './path.ts'
import { quoted } from './quoted.ts'

type Words = { [C in FileFault['code']]: (fault: Extract<FileFault, { code: C }>) => string }

const didYouMean = (near: string | undefined) => (near === undefined ? '' : ` Did you mean ${quoted(near)}?`)
const listed = (names: readonly string[]) => names.map(quoted).join(', ')
const inWords = {
  face: 'face',
  hole: 'hole',
  kind: 'bolt kind',
  line: 'line',
  tool: 'tool',
  part: 'part',
  job: 'job',
} as const
/** A place on the face, to a tenth of a millimetre: finer is not seen on a drawing. */
const place = ([x, y]: readonly [number, number]) => `x ${tenth(x)}, y ${tenth(y)}`
const tenth = (figure: number) => String(Number(figure.toFixed(1)))
const NEEDED = {
  cover: '"cover" is missing. Add it with the outline (corners in mm) and the thickness of the cover.',
  bed: '"bed" is missing. Add it with its stiffness in N/mm³: docs/unit-file.md lists usual ones by material.',
  place: '"at" is missing: without a place the bolt is nowhere on the cover. Add where the hole stands, [x, y] in mm.',
  'two bolts': 'fewer than two bolts hold this cover, so there is no order to plan. Add the other holes.',
} as const

/** One or two short sentences per fault: what is wrong, and what to do about it. */
const WORDS: Words = {
  'too-big': (f) =>
    `the file is larger than ${f.limit / 1e6} MB, so it was not read. A unit file holds one unit; photographs do not belong in it.`,
  'not-utf8': () => 'the file is not text in UTF-8. Save it as UTF-8.',
  'not-json': (f) =>
    `line ${f.line}, column ${f.column}: ${f.found === '' ? 'the file ends' : `found ${quoted(f.found)}`} where ${f.expected} belongs.${slipAt(f.found)}`,
  'too-deep': (f) =>
    `brackets stand more than ${f.limit} deep in each other, so the file was not read. A unit file never needs so many.`,
  'too-many-values': (f) =>
    `the file holds more than ${f.limit} values, so it was not read. A unit file holds one unit.`,
  'number-out-of-range': (f) => `${f.found} is too great to be held as a number. Give the figure that was read.`,
  'repeated-field': (f) => `the field ${quoted(f.name)} stands twice here. Keep one of the two.`,
  'unknown-field': (f) =>
    `no field of this name is known here.${didYouMean(f.near)}${f.near === undefined ? ' Remove it, or look the name up in docs/unit-file.md.' : ''}`,
  'missing-field': (f) => `${quoted(f.name)} is needed here and is missing. Add it.`,
  'wrong-type': (f) => `found ${f.found} where ${f.expected} belongs.${forType(f.found, f.expected)}`,
  'unknown-word': (f) => `${quoted(f.found)} is not one of ${listed(f.expected)}.${didYouMean(f.near)}`,
  'wrong-format': (f) => `${quoted(f.found)} is no format that this Gripbook reads. Write "unit/1".`,
  'not-a-quantity': (f) =>
    `found ${f.found} where a quantity belongs. Write 12.3, {"value": 12.3, "plusMinus": 0.1} or {"atLeast": 11, "atMost": 13}.`,
  'quantity-mixed': (f) =>
    `${listed(f.fields)} do not go together. Give a value, or a nominal size, or ends (atLeast, atMost).`,
  'quantity-empty': () => 'the quantity gives no figure. Add one, or leave the whole field out when it is unknown.',
  'not-above-zero': (f) => `${f.found} is not above 0. Give a figure above 0.`,
  'too-small': (f) => `${f.found} is less than ${f.limit}, the least that goes here.`,
  'too-large': (f) =>
    f.found === f.limit
      ? `${f.found} is just too much: the figure must lie below ${f.limit}.`
      : `${f.found} is more than ${f.limit}, the most that goes here. Check the figure and its unit.`,
  'not-whole': (f) => `${f.found} is no whole number. Give a whole number.`,
  'text-empty': () => 'the text is empty. Write something, or leave the field out where it may be.',
  'text-too-long': (f) => `the text is longer than ${f.limit} characters. Shorten it.`,
  'text-unprintable': () =>
    'the text holds a sign that does not print (a control or direction sign). Type the text again.',
  'too-few': (f) =>
    f.least === 1
      ? 'the list is empty. It needs at least one entry.'
      : `the list is too short. It needs at least ${f.least} entries.`,
  'too-many': (f) => `the list is longer than ${f.limit} entries. Split it.`,
  'trial-figures': (f) =>
    f.given.length === 0
      ? 'the trial gives no figure. Add one of "turns", "stickOut" or "proud".'
      : `${listed(f.given)} stand together. Give just one of them; write a second trial for the other.`,
  'reserved-name': (f) =>
    f.name === 'none'
      ? '"none" stands for an empty hole. Give the kind another name.'
      : `${quoted(f.name)} cannot be used as a name. Choose another.`,
  'repeated-name': (f) =>
    `the ${inWords[f.what]} ${quoted(f.name)} was named before, at ${pathText(f.first)}. Each needs a name of its own.`,
  'no-such-name': (f) =>
    `there is no ${inWords[f.what]} ${quoted(f.name)} here.${didYouMean(f.near)}${f.near === undefined ? ` Add it, or name one that is there.` : ''}`,
  'line-without-length': () => 'the line begins and ends at one place. Give its two ends.',
  'face-inside-itself': (f) =>
    `${quoted(f.name)} is inside itself. Name the face whose cover hides it, or leave it out.`,
  'rank-of-itself': (f) => `${quoted(f.name)} is compared with itself. Name two different ones.`,
  'not-a-thread': (f) => `${quoted(f.found)} is not a thread that is known. Write it as M6, M10×1.25 or 1/4-20 UNC.`,
  'not-a-length': (f) => `${quoted(f.found)} is not a length. Write it as 12.3 or {"value": 12.3, "unit": "mm"}.`,
  'not-a-torque': (f) => `${quoted(f.found)} is not a torque. Write it as 10 or {"value": 8, "unit": "lbf·ft"}.`,
  'unknown-unit': (f) => `${quoted(f.found)} is not a unit that is known here. Use one of ${f.expected.join(', ')}.`,
  'wrong-dimension': (f) =>
    `${quoted(f.found)} measures no ${f.expected}. Use one of ${unitsOf(f.expected === 'torque' ? 'torque' : 'length').join(', ')}.`,
  negative: (f) => `${f.found} is negative. Give a figure of 0 or more.`,
  'ends-crossed': (f) => `the lower end ${f.atLeast} lies above the upper end ${f.atMost}. Swap them, or read again.`,
  'two-figures-disagree': (f) =>
    `${f.value} ${f.unit} and ${f.also} ${f.alsoUnit} are not the same figure: they differ by ${rounded(f.off)} ${sizeOf(f.alsoUnit as UnitName, 'length') === undefined ? 'N·m' : 'mm'}. One is a slip; look the figure up again.`,
  'tightening-needs': (f) => NEEDED[f.missing],
  'bed-not-above-zero': () =>
    'the stiffness is not above 0: on nothing the cover finds no rest. Give a figure above 0, or both ends of what it may be.',
  'outline-crosses-itself': (f) =>
    `the edge from this corner to the next meets the edge from corner [${f.other}] near ${place(f.near)} mm. Put the corners in the order in which they follow each other round.`,
  'outline-without-area': () => 'the outline encloses nothing: its corners lie in one line. Look the corners up again.',
  'opening-leaves-cover': (f) =>
    `the outline leaves the cover near ${place(f.near)} mm. Keep it inside the cover’s outline, or draw that outline round it.`,
  'openings-cross': (f) =>
    `it meets the one at [${f.other}] near ${place(f.near)} mm. Draw the two as one outline, or keep them apart.`,
  'bolt-outside-cover': (f) =>
    `the hole at ${place(f.at)} mm lies outside the cover. Look up "at", or the corners of the outline.`,
  'bolt-in-opening': (f) =>
    `the hole at ${place(f.at)} mm lies in openings[${f.opening}], where there is no cover. Look up "at", or the corners of the opening.`,
  'bolts-at-one-place': (f) =>
    `the hole lies ${tenth(f.apart)} mm from hole ${quoted(f.other)}, and two bolts have no room closer than ${tenth(f.least)} mm. Look up "at" of both.`,
  'line-leaves-cover': (f) =>
    `the line leaves the cover near ${place(f.near)} mm. Keep its whole length on the cover, clear of openings.`,
  'nothing-to-lie-on': () => 'the hollows leave the cover nothing to lie on. Draw them smaller.',
  'cover-too-soft': () =>
    'the cover is so thin, or the bed so stiff, that no bolt feels the next: there is nothing to compute. Look the thickness and the stiffness of the bed up again.',
  'cover-too-stiff': () =>
    'the cover, or its thickest region, is so stiff on so soft a bed that it lies as a block: there is nothing to compute. Look the thicknesses, "young" and the stiffness of the bed up again.',
}

/** Slips that are made often, said by the sign at which the reading stopped. */
function slipAt(found: string): string {
  if (found === "'" || found === '“' || found === '”' || found === '‘') return ' Text stands in straight double quotes.'
  if (found === '/' || found === '#') return ' A unit file has no comments; use a "note" field.'
  if (found === '}' || found === ']') return ' Is there a comma too many before it, or a value missing?'
  if (found === '"' || found === '{' || found === '[') return ' Is a comma missing before it?'
  if (/^(NaN|Infinity|-?inf)/i.test(found)) return ' Leave out what is unknown.'
  return ''
}

function forType(found: string, expected: string): string {
  if (found === 'null') return ' Leave the field out when it is unknown.'
  if (expected === 'true') return ' Leave the field out where it is not so.'
  if (expected === 'text' && /^-?\d/.test(found)) return ` Put it in quotes: "${found}".`
  if (expected === 'a number' && /^"-?\d+([.,]\d+)?"$/.test(found))
    return ` Take the quotes away: ${found.slice(1, -1).replace(',', '.')}.`
  return ''
}

function rounded(figure: number): string {
  return String(Number(figure.toPrecision(2)))
}

/** A fault in words: its path, what is wrong, what to do. */
export function faultText(fault: FileFault): string {
  const words = (WORDS[fault.code] as (fault: FileFault) => string)(fault)
  return fault.path.length === 0 ? words : `${pathText(fault.path)}: ${words}`
}

/** All faults in words, one line each; after `most` lines only how many there are besides. */
export function faultLines(faults: readonly FileFault[], most = 50): string[] {
  const lines = faults.slice(0, most).map(faultText)
  return faults.length > most ? [...lines, `and ${faults.length - most} more`] : lines
}
