/** Which wrench a face is tightened with, and what sits on it. */
import type { Extension } from '@gripbook/engine'
import type { Settings, Wrench } from '../device/settings.ts'

/** A tool without a reading: what it tightens is by feel, and the record says so. Its name is what the record calls it. */
export const RATCHET: Wrench = { name: 'ratchet wrench', tells: 'nothing' }

type Entry = { type: string; body: { [name: string]: unknown } }

/** As chosen on this device for the face; else the one that the record names last there, where this device knows it. */
export function wrenchFor(
  { wrenches, used }: Pick<Settings, 'wrenches' | 'used'>,
  place: string,
  entries: readonly Entry[],
  face: string,
): Wrench | null {
  const all = [...wrenches, RATCHET]
  const chosen = all.find(({ name }) => name === used[place])
  if (chosen !== undefined) return chosen
  const last = entries.findLast(({ type, body }) => type === 'pass-torqued' && body.face === face)?.body.tool
  const tool = last as { name?: string; number?: string } | undefined
  if (tool === undefined) return null
  return all.find(({ name, number }) => name === tool.name || (number !== undefined && number === tool.number)) ?? null
}

/**
 * The wrench that the record names last and that this device does not know, as far as the entries say: another device has chosen it, and nobody types it
 * again. `names`: what the record calls a wrench of a number, without what sat on it. Null where there is none.
 */
export function wrenchElsewhere(
  wrenches: readonly Wrench[],
  entries: readonly Entry[],
  names: (number: string) => string | null,
): Omit<Wrench, 'tells'> | null {
  const last = entries.findLast(({ type, body }) => type === 'pass-torqued' && body.tool !== undefined)?.body.tool
  const tool = last as (Omit<Wrench, 'tells'> & { byFeel?: boolean }) | undefined
  if (tool === undefined || tool.byFeel === true) return null
  const { byFeel: _, ...label } = tool
  const name = (label.number === undefined ? null : names(label.number)) ?? label.name
  const isHere = wrenches.some((one) => one.name === name || (one.number !== undefined && one.number === label.number))
  return isHere ? null : { ...label, name }
}

/** Lengths in mm and an angle, as they were typed. */
export type ExtensionText = { lever: number; reach: number; angle: number }

export function extensionOf({ lever, reach, angle }: ExtensionText): Extension {
  return { lever, reach, angle }
}

export function writeExtension(extension: ExtensionText | null): string {
  return extension === null ? '' : `${extension.lever} ${extension.reach} ${extension.angle}`
}

/** From how it was kept; null for none, and for what cannot be read. */
export function readExtension(text: string | undefined): ExtensionText | null {
  const [lever, reach, angle] = (text ?? '').split(' ').map(Number)
  if (!lever || !reach || angle === undefined || ![lever, reach, angle].every(Number.isFinite)) return null
  return { lever, reach, angle }
}
