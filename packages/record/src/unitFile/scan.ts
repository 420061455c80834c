/**
 * Reads JSON text once, without building anything and without calling itself, before `JSON.parse` sees it. It finds what `JSON.parse`
 * passes over in silence or says in words that differ from one engine to the next: a field that stands twice (the last would win), a number
 * too great to hold, brackets nested too deep, and where a slip of the pen stands by line and column.
 */
import type { FaultPath } from '@gripbook/engine'
import type { FileFault } from './fault.ts'
import { LIMITS } from './limits.ts'

/** `step` is the field or the place in the list that is being read; a field's is undefined until its name is known. */
type Frame = { fields: Set<string> | null; step: string | number | undefined }
type Want = 'value' | 'value or ]' | 'name' | 'name or }' | ':' | ', or end' | 'nothing more'

const SAID: Record<Want, string> = {
  value: 'a value',
  'value or ]': 'a value or ]',
  name: 'a field name in double quotes',
  'name or }': 'a field name in double quotes, or }',
  ':': 'a colon',
  ', or end': 'a comma or a closing bracket',
  'nothing more': 'nothing more',
}

/** `broken`: the text is not JSON, or so large that it is not read any further. */
export type Scanned = { broken: boolean; faults: FileFault[] }

/** Looks through a text. Each fault carries its path; a text that is no JSON has exactly one such fault, the last of the list. */
export function scanJson(text: string): Scanned {
  const faults: FileFault[] = []
  const frames: Frame[] = []
  let position = 0
  let values = 0
  let want: Want = 'value'

  const path = (): FaultPath => frames.map((frame) => frame.step).filter((step) => step !== undefined)
  const stop = (fault: FileFault): Scanned => ({ broken: true, faults: [...faults, fault] })
  const notJson = (where: number, expected: string): Scanned => {
    const before = text.slice(0, where)
    const line = before.split('\n').length
    const column = where - before.lastIndexOf('\n')
    const word = /^[\w.+-]{1,20}/.exec(text.slice(where, where + 20))
    const found = where >= text.length ? '' : (word?.[0] ?? String.fromCodePoint(text.codePointAt(where)!))
    return stop({ code: 'not-json', path: path(), line, column, found, expected })
  }
  const digits = (): boolean => {
    const from = position
    while (isDigit(text.charCodeAt(position))) position++
    return position > from
  }
  const afterValue = (): Want => (frames.length === 0 ? 'nothing more' : ', or end')

  /** Moves past a string that starts here. Returns where it goes wrong, or -1. */
  const passString = (): number => {
    position++
    for (;;) {
      const code = text.charCodeAt(position)
      if (Number.isNaN(code) || code < 0x20) return position
      if (code === QUOTE) {
        position++
        return -1
      }
      if (code === BACKSLASH) {
        const next = text[position + 1]
        if (next === 'u') {
          for (let i = 2; i < 6; i++) if (!isHex(text.charCodeAt(position + i))) return position + i
          position += 6
          continue
        }
        if (next === undefined || !'"\\/bfnrt'.includes(next)) return position + 1
        position += 2
        continue
      }
      position++
    }
  }
  /** Moves past a number that starts here. Returns whether it is one. */
  const passNumber = (): boolean => {
    if (text[position] === '-') position++
    if (text[position] === '0') position++
    else if (!digits()) return false
    if (text[position] === '.') {
      position++
      if (!digits()) return false
    }
    if (text[position] === 'e' || text[position] === 'E') {
      position++
      if (text[position] === '+' || text[position] === '-') position++
      if (!digits()) return false
    }
    return true
  }

  for (;;) {
    while (isSpace(text.charCodeAt(position))) position++
    const sign = text[position]
    if (sign === undefined) return want === 'nothing more' ? { broken: false, faults } : notJson(position, SAID[want])
    const frame = frames.at(-1)

    if (want === 'nothing more') return notJson(position, SAID[want])
    if (want === ':') {
      if (sign !== ':') return notJson(position, SAID[want])
      position++
      want = 'value'
      continue
    }
    const inObject = frame !== undefined && frame.fields !== null
    if ((want === ', or end' || want === 'name or }' || want === 'value or ]') && sign === (inObject ? '}' : ']')) {
      frames.pop()
      position++
      want = afterValue()
      continue
    }
    if (want === ', or end') {
      if (sign !== ',' || frame === undefined) return notJson(position, SAID[want])
      position++
      if (typeof frame.step === 'number') frame.step++
      want = inObject ? 'name' : 'value'
      continue
    }
    if (want === 'name' || want === 'name or }') {
      if (sign !== '"' || frame?.fields == null) return notJson(position, SAID[want])
      const from = position
      const wrong = passString()
      if (wrong >= 0) return notJson(wrong, 'the rest of the text and a closing "')
      const name = JSON.parse(text.slice(from, position)) as string
      frame.step = name
      if (frame.fields.has(name)) faults.push({ code: 'repeated-field', path: path(), name })
      frame.fields.add(name)
      want = ':'
      continue
    }

    // a value
    if (++values > LIMITS.values) return stop({ code: 'too-many-values', path: [], limit: LIMITS.values })
    if (sign === '{' || sign === '[') {
      if (frames.length >= LIMITS.depth) return stop({ code: 'too-deep', path: [], limit: LIMITS.depth })
      frames.push(sign === '{' ? { fields: new Set(), step: undefined } : { fields: null, step: 0 })
      position++
      want = sign === '{' ? 'name or }' : 'value or ]'
      continue
    }
    const from = position
    if (sign === '"') {
      const wrong = passString()
      if (wrong >= 0) return notJson(wrong, 'the rest of the text and a closing "')
    } else if (sign === '-' || isDigit(sign.charCodeAt(0))) {
      if (!passNumber()) return notJson(position, 'a digit')
      const figure = text.slice(from, position)
      if (!Number.isFinite(Number(figure))) {
        faults.push({ code: 'number-out-of-range', path: path(), found: figure.slice(0, 30) })
      }
    } else {
      const word = ['true', 'false', 'null'].find((known) => text.startsWith(known, position))
      if (word === undefined) return notJson(position, SAID[want])
      position += word.length
    }
    want = afterValue()
  }
}

const QUOTE = 0x22
const BACKSLASH = 0x5c

function isDigit(code: number): boolean {
  return code >= 0x30 && code <= 0x39
}

function isHex(code: number): boolean {
  return isDigit(code) || (code >= 0x41 && code <= 0x46) || (code >= 0x61 && code <= 0x66)
}

function isSpace(code: number): boolean {
  return code === 0x20 || code === 0x0a || code === 0x0d || code === 0x09
}
