import { checkTwoFigures, type Fault, type FaultPath, type Figure, readThread, sizeOf } from '@gripbook/engine'

/** Signs that turn text around or hide in it: U+202A to U+202E, U+2066 to U+2069, and the line and paragraph separators. */
function hides(code: number): boolean {
  return (code >= 0x2028 && code <= 0x202e) || (code >= 0x2066 && code <= 0x2069)
}

/** True when nothing in a text could move the cursor of a terminal or hide what is printed. */
export function isPrintable(text: string): boolean {
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i)
    if (code < 0x20 || (code >= 0x7f && code <= 0x9f) || hides(code)) return false
  }
  return true
}

/** As `isPrintable`, but with line ends and tabs, as a note may have. */
export function isPrintableNote(text: string): boolean {
  return isPrintable(text.replace(/[\n\r\t]/g, ' '))
}

/** True for a thread that the engine knows. */
export function isThread(text: string): boolean {
  return readThread(text).ok
}

/** True when the lower end of an interval is not above its upper end. */
export function endsInOrder(ends: { atLeast?: number; atMost?: number }): boolean {
  return ends.atLeast === undefined || ends.atMost === undefined || ends.atLeast <= ends.atMost
}

/** True when a line leads from one place to another. */
export function hasLength(line: { from: readonly [number, number]; to: readonly [number, number] }): boolean {
  return line.from[0] !== line.to[0] || line.from[1] !== line.to[1]
}

/** True when a figure given in two units is one and the same within the last digit of either. */
export function figuresAgree(given: object): boolean {
  return disagreement(given, []) === null
}

/** The fault of a figure given in two units that disagree, or null. The units say which dimension they measure. */
export function disagreement(given: object, path: FaultPath): Fault | null {
  const figure = given as Figure & { also?: Figure }
  const unit = figure.unit ?? figure.also?.unit ?? 'mm'
  return checkTwoFigures(figure, sizeOf(unit, 'length') === undefined ? 'torque' : 'length', path)
}
