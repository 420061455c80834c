import { must, type Unit } from '@gripbook/engine'
import { unitSchema } from './schema.ts'

const WIDTH = 100

/**
 * The text of a unit file: fields in the schema's order, two spaces to a step, what is short on one line, a line end at the end.
 * The same unit always gives the same text, and reading it gives the same unit. A unit that the schema refuses throws `Bug`.
 */
export function writeUnitFile(unit: Unit): string {
  const read = unitSchema.safeParse(unit)
  must(read.success, 'writeUnitFile: this is not a unit', read.error?.issues)
  return `${lines(read.data, '')}\n`
}

function lines(value: unknown, indent: string): string {
  const short = oneLine(value)
  if (short !== undefined && indent.length + short.length <= WIDTH) return short
  const deeper = `${indent}  `
  if (Array.isArray(value)) return `[\n${value.map((item) => deeper + lines(item, deeper)).join(',\n')}\n${indent}]`
  const fields = Object.entries(value as object).map(
    ([name, item]) => `${deeper}${JSON.stringify(name)}: ${lines(item, deeper)}`,
  )
  return `{\n${fields.join(',\n')}\n${indent}}`
}

/** A value on one line, or undefined for one that holds objects inside objects or long lists: those are easier to read spread out. */
function oneLine(value: unknown): string | undefined {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  const items = Array.isArray(value) ? value : Object.values(value)
  if (items.some((item) => typeof item === 'object' && item !== null && Object.values(item).some(isNested)))
    return undefined
  if (Array.isArray(value))
    return value.some((item) => typeof item === 'object' && !Array.isArray(item))
      ? undefined
      : `[${value.map(oneLine).join(', ')}]`
  return `{${Object.entries(value)
    .map(([name, item]) => `${JSON.stringify(name)}: ${oneLine(item)}`)
    .join(', ')}}`
}

function isNested(value: unknown): boolean {
  return typeof value === 'object' && value !== null
}
