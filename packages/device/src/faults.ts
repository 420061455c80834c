/** Everything that the record on a device can be stopped by: one list with the words. What the shop refuses an entry for is in it too. */
export const DEVICE_FAULTS = {
  'bad-entry': 'This entry is not what its type says it is, so it was not written.',
  'storage-full':
    'The storage of this device is full: nothing more can be written until something else on it is deleted.',
  'storage-failed': 'The storage of this device does not answer. What was written before is kept.',
  'storage-closed': 'Gripbook was opened elsewhere in a newer version. Load this page again.',
  'newer-version':
    'What is on this device was written by a newer Gripbook. Nothing was changed or deleted: load the newer one.',
  damaged:
    'What Gripbook kept on this device is damaged: it does not say any more which device this is. Nothing was changed or deleted.',
  'no-answer': 'The shop does not answer. What is written is kept on this device and sent later.',
  'strange-answer': 'What answered is not the shop, or not in a form that this Gripbook understands.',
  'not-signed-in': 'This device is not paired, or its session has ended. Ask the owner for a code.',
  'refused-by-shop': 'The shop refuses this.',
  'code-not-valid': 'This code is wrong, used up or too old. Ask for a new one.',
  'too-often': 'Too many requests. Wait a little.',
  'no-bytes': 'There is nothing in this photograph.',
} as const satisfies Record<string, string>

export type DeviceFaultCode = keyof typeof DEVICE_FAULTS

/** Thrown where something cannot be done; `code` is a name of the list, `facts` are the figures, `message` the words. */
export class DeviceFault extends Error {
  readonly code: DeviceFaultCode
  readonly facts: Readonly<Record<string, unknown>>
  constructor(code: DeviceFaultCode, facts: Record<string, unknown> = {}) {
    super(DEVICE_FAULTS[code])
    this.name = 'DeviceFault'
    this.code = code
    this.facts = facts
  }
}

/** Why the shop did not take an entry or a photograph. `code` is the shop's own, or that of the record's rules. */
export type ShopRefusal = { code: string; facts: Record<string, unknown> }

const REFUSALS: Readonly<Record<string, string>> = {
  'bad-entry': 'The shop does not accept what it says.',
  malformed: 'The shop cannot read it.',
  'wrong-hash': 'Its content is not the one that it was written with.',
  'same-id-other-content': 'The shop has another entry under its id.',
  'same-number-other-entry': 'The shop has another entry of this device at its place.',
  'broken-chain': 'It does not follow the entry that the shop has before it.',
  'other-device': 'The person who made it was never paired on this device.',
  'not-allowed': 'Your role does not allow it.',
  'wrong-request': 'The shop does not understand how it was sent.',
  'wrong-type': 'The shop does not take this kind of content.',
  'too-large': 'It is larger than what the shop takes.',
  'not-that-photograph': 'The photograph did not arrive as it was taken.',
  'missing-before': 'The shop lacks entries before it that are not on this device any more.',
  'lost-here': 'Its bytes are no longer on this device.',
  'bad-photograph': 'The shop cannot read this photograph: it takes JPEG, PNG and WebP.',
}

/** A refusal in one sentence; one that is not in the list is named by its code. */
export function refusalWords({ code }: ShopRefusal): string {
  return REFUSALS[code] ?? `The shop does not take it (${code}).`
}

/** What a failed write of the browser's database means to whoever was writing. */
export function storageFault(error: unknown): DeviceFault {
  if (error instanceof DeviceFault) return error
  const names = namesOf(error)
  const facts = { why: error instanceof Error ? error.message : String(error) }
  if (names.includes('QuotaExceededError')) return new DeviceFault('storage-full', facts)
  if (names.includes('VersionError')) return new DeviceFault('newer-version', facts)
  if (names.includes('DatabaseClosedError')) return new DeviceFault('storage-closed', facts)
  return new DeviceFault('storage-failed', facts)
}

/** What the database fails at, thrown in the words of the list. */
export async function inWords<T>(work: () => PromiseLike<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    throw storageFault(error)
  }
}

/** The name of an error and of those inside it: an aborted transaction carries its reason within. */
function namesOf(error: unknown): string[] {
  const names: string[] = []
  for (let at = error as { name?: unknown; inner?: unknown } | null | undefined; at && names.length < 5; )
    if (typeof at === 'object') {
      names.push(String(at.name))
      at = at.inner as typeof at
    } else break
  return names
}
