/** Devices that work on one unit and exchange entries over a bad line, in one seeded history. */
import { knowledgeOf, nextEntry } from '../entry.ts'
import { CATALOGUE } from '../events/catalogue.ts'
import type { Happening } from '../events/define.ts'
import type { Event } from '../events/event.ts'
import { fold } from '../fold.ts'
import { sha256OfText } from '../sha256.ts'
import { pick, type Random, seeded } from '../unitFile/testing/random.ts'
import { SAMPLES } from './samples.ts'

export const uuid = (n: number): string => `00000000-0000-4000-8000-${n.toString(16).padStart(12, '0')}`
export const UNIT = uuid(0xa)
export const DEVICES = [uuid(0xd1), uuid(0xd2), uuid(0xd3)] as const
const START = Date.parse('2026-03-01T09:00:00.000Z')
/** ms: right, 20 minutes slow, years fast. */
const CLOCKS = [0, -1_200_000, 3e11]

export type Device = { id: string /** In the order in which they came, doubles and all. */; inbox: Event[] }
export type History = { devices: Device[]; made: Event[] }

/** What happens next on a device: mostly a sample, now and then an undoing or the settling of a clash that it sees. */
function happens(random: Random, device: Device): Happening {
  const chance = random()
  if (chance < 0.1 && device.inbox.length > 0) return happening('undone', { event: pick(random, device.inbox).id })
  if (chance < 0.15) {
    const clash = fold(UNIT, device.inbox).clashes[0]
    if (clash !== undefined) {
      const stands = random() < 0.8 ? pick(random, clash.entries).event : null
      return happening('clash-settled', { at: [...clash.place], field: clash.field, stands })
    }
  }
  const { type } = pick(random, CATALOGUE)
  return happening(type, SAMPLES[type](random) as Happening['body'])
}

function happening(type: string, body: Happening['body']): Happening {
  return { type, version: 1, body }
}

/** About `steps` entries on three devices, with a line that delays, repeats, drops and reorders; in the end everything that was lost is sent again. */
export function history(seed: number, steps: number): History {
  const random = seeded(seed)
  const devices = DEVICES.map((id): Device => ({ id, inbox: [] }))
  const line: { to: Device; event: Event }[] = []
  const made: Event[] = []
  for (let step = 0; step < steps; step++) {
    const device = pick(random, devices)
    const clock = START + step * 60_000 + CLOCKS[devices.indexOf(device)]!
    const given = { id: uuid(0x1000 + step), at: new Date(clock).toISOString(), who: `builder ${device.id.at(-1)}` }
    const event = nextEntry(
      knowledgeOf(UNIT, device.id, device.inbox),
      { ...given, ...happens(random, device) },
      sha256OfText,
    )
    made.push(event)
    device.inbox.push(event)
    for (const to of devices) {
      if (to === device) continue
      // an event that is lost comes with the last sending only
      if (random() < 0.7) line.push({ to, event })
      if (random() < 0.15) line.push({ to, event })
    }
    while (line.length > 0 && random() < 0.6) {
      const [{ to, event: come }] = line.splice(Math.floor(random() * line.length), 1) as [(typeof line)[number]]
      to.inbox.push(come)
    }
  }
  for (const { to, event } of line) to.inbox.push(event)
  for (const device of devices) device.inbox.push(...shuffled(random, made))
  return { devices, made }
}

export function shuffled<T>(random: Random, list: readonly T[]): T[] {
  const left = [...list]
  for (let i = left.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1))
    ;[left[i], left[j]] = [left[j]!, left[i]!]
  }
  return left
}
