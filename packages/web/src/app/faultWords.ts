import { DeviceFault } from '@gripbook/device'
import { words } from '../words/index.ts'

/** What stopped something, in the words of the page. */
export function faultWords(error: unknown): string {
  if (error instanceof DeviceFault) return words.faults[error.code]
  return words.shell.failed(error instanceof Error ? error.message : String(error))
}
