import { nearestName } from '@gripbook/record'

export type Options = { words: string[]; values: Map<string, string>; flags: Set<string> }
export type ReadOptions = { ok: true; options: Options } | { ok: false; why: string }

/**
 * Sorts a command's arguments into words, options with a value (`--face pan` or `--face=pan`) and flags (`--json`). After `--` all are words.
 * An option that is not known, stands twice or lacks its value is refused with words.
 */
export function readOptions(
  args: readonly string[],
  withValue: readonly string[],
  flags: readonly string[],
): ReadOptions {
  const options: Options = { words: [], values: new Map(), flags: new Set() }
  let onlyWords = false
  for (let i = 0; i < args.length; i++) {
    const arg = args[i]!
    if (onlyWords || !arg.startsWith('-') || arg === '-') {
      options.words.push(arg)
      continue
    }
    if (arg === '--') {
      onlyWords = true
      continue
    }
    const sign = arg.indexOf('=')
    const name = sign < 0 ? arg : arg.slice(0, sign)
    if (flags.includes(name) && sign < 0) {
      options.flags.add(name)
      continue
    }
    if (flags.includes(name)) return { ok: false, why: `${name} takes no value.` }
    if (!withValue.includes(name)) {
      const near = nearestName(name, [...withValue, ...flags])
      return { ok: false, why: `${JSON.stringify(name)} is not an option here.${near ? ` Did you mean ${near}?` : ''}` }
    }
    if (options.values.has(name)) return { ok: false, why: `${name} is given twice.` }
    const value = sign < 0 ? args[++i] : arg.slice(sign + 1)
    if (value === undefined || value === '') return { ok: false, why: `${name} needs a value.` }
    options.values.set(name, value)
  }
  return { ok: true, options }
}
