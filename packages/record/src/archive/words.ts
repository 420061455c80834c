import type { ChainFault } from '../chain.ts'
import type { ArchiveFault } from './check.ts'

/** A fault of the chain in one sentence that names the entry. */
export function chainFaultText(fault: ChainFault): string {
  const entry = `entry ${fault.seq} of device ${fault.device}${fault.event === '' ? '' : ` (${fault.event})`}`
  switch (fault.code) {
    case 'changed':
      return `The content of ${entry} was changed after it was made.`
    case 'missing': {
      const which = fault.from === fault.to ? `Entry ${fault.from}` : `Entries ${fault.from} to ${fault.to}`
      return `${which} of device ${fault.device} ${fault.from === fault.to ? 'is' : 'are'} missing.`
    }
    case 'does-not-follow':
      return `The ${entry} does not follow the one before it: one of the two was exchanged or moved.`
    case 'number-twice':
      return `The ${entry} has the number of another one (${fault.other}).`
    case 'id-twice':
      return `The ${entry} is there twice.`
    case 'wrong-tick':
      return `The ${entry} stands in the order where it cannot have been made.`
    case 'moved':
      return `The ${entry} was moved behind a later one of its device (${fault.after}).`
  }
}

/** A fault of an archive in one sentence. */
export function archiveFaultText(fault: ArchiveFault): string {
  switch (fault.code) {
    case 'file-missing':
      return `${fault.name} is missing.`
    case 'file-unknown':
      return `${fault.name} is not named in the manifest.`
    case 'file-changed':
      return `${fault.name} was changed or damaged.`
    case 'manifest-unreadable':
      return `manifest.json cannot be read${fault.path === '' ? '' : ` (at ${fault.path})`}.`
    case 'other-format':
      return `The archive is of the format ${fault.found}; this Gripbook reads archive/1.`
    case 'manifest-changed':
      return 'manifest.json was changed or damaged.'
    case 'line-unreadable':
      return `Line ${fault.line} of entries.ndjson is no entry${fault.path === '' ? '' : ` (at ${fault.path})`}.`
    case 'other-unit':
      return `Line ${fault.line} of entries.ndjson belongs to another unit (${fault.unit}).`
    case 'out-of-order':
      return `Line ${fault.line} of entries.ndjson (entry ${fault.event}) stands out of order.`
    case 'chain':
      return chainFaultText(fault.fault)
    case 'record-differs':
      return `The entries are not those that the archive was made with: ${fault.entries} are here, ${fault.expected} were packed.`
    case 'unit-differs':
      return 'The entries give another unit than the one in unit.json.'
  }
}
