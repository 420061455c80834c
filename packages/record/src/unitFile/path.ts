import type { FaultPath } from '@gripbook/engine'
import { quoted } from './quoted.ts'

/** A path as the user reads it: `faces[0].holes[3].grip`. A name that is no plain word stands in brackets and quotes. */
export function pathText(path: FaultPath): string {
  let text = ''
  for (const step of path) {
    if (typeof step === 'number') text += `[${step}]`
    else if (/^[A-Za-z_]\w{0,59}$/.test(step)) text += text === '' ? step : `.${step}`
    else text += `[${quoted(step)}]`
  }
  return text
}

/** What stands at a path, or undefined. Own fields only, so that a field named after something built in is never taken for one. */
export function at(value: unknown, path: FaultPath): unknown {
  let here = value
  for (const step of path) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, step)) return undefined
    here = (here as Record<string | number, unknown>)[step]
  }
  return here
}
