import type { Extension } from '@gripbook/engine'
import type { FoldedUnit } from '@gripbook/record'
import { useApp } from '../app/context.ts'
import type { Wrench } from '../device/settings.ts'
import { type ExtensionText, extensionOf, readExtension, wrenchFor, writeExtension } from './wrenchHere.ts'

export type WrenchHere = {
  /** Null: none was chosen for this face yet. */
  wrench: Wrench | null
  extension: Extension | null
  choose(wrench: Wrench, extension: ExtensionText | null): void
}

/** The wrench with which this face is tightened: chosen once, kept on this device; on another one the last that the record names is taken, if it is known there. */
export function useWrench(folded: FoldedUnit, face: string): WrenchHere {
  const { settings, choose } = useApp()
  const place = `wrench ${folded.id} ${face}`
  const extensionPlace = `crow-foot ${folded.id} ${face}`
  const text = readExtension(settings.used[extensionPlace])
  return {
    wrench: wrenchFor(settings, place, folded.entries, face),
    extension: text === null ? null : extensionOf(text),
    choose(wrench, extension) {
      const others = settings.wrenches.filter(({ name }) => name !== wrench.name)
      choose({
        wrenches: wrench.tells === 'nothing' ? settings.wrenches : [wrench, ...others],
        used: { ...settings.used, [place]: wrench.name, [extensionPlace]: writeExtension(extension) },
      })
    },
  }
}
