/** The build record of a unit as a sealed PDF: what it is made from is gathered here, what it looks like is with whoever hands in the maker. */
import { type Event, photographName, photographsOf, recordHash } from '@gripbook/record'
import type { Shop } from '../app/shop.ts'
import { shopKey, signedBy } from '../archives/signature.ts'
import { MOST_PHOTOGRAPH, type ReadArchive, readArchive } from '../archives/unitArchive.ts'
import type { Zip } from '../archives/zipIn.ts'
import { mustNotBeRestoring } from '../backup/unfinished.ts'
import { oneAtATime, proven, smaller } from '../photographs/pictures.ts'
import { sealed } from '../seals/paperSeal.ts'
import { sha256 } from '../sha256.ts'

/** All that a build record is made from. `people`: names by id. `photographs`: JPEG of 1280 pixels at most, by the name that entries call each by. */
export type ForPaper = {
  unit: string
  events: readonly Event[]
  people: Readonly<Record<string, string>>
  shop: { address?: string; key?: string }
  photographs: ReadonlyMap<string, Uint8Array>
}

/** Makes the PDF, without its seal. The same content gives the same bytes. */
export type PaperMaker = (given: ForPaper) => Promise<Uint8Array>

/** On paper more than 1280 pixels is not seen: 180 mm at 180 dots to the inch. */
const LONGEST = '1280'

/** The build record of a unit of this shop, sealed with its key; null for a unit that is not known. */
export async function paperOfUnit(shop: Shop, unit: string, make: PaperMaker): Promise<Buffer | null> {
  const events = await shop.store.ofUnit(unit)
  if (events.length === 0) return null
  await mustNotBeRestoring(shop.db)
  const photographs = new Map<string, Uint8Array>()
  for (const name of photographsOf(events)) {
    const bytes = await shop.photographs.read(name, LONGEST)
    if (bytes !== null) photographs.set(name, bytes)
  }
  return sealedPaper({ unit, events, photographs }, make, shop)
}

/** The build record of an archive that has been opened; sealed by the shop where one is given, which also knows the names of its people. */
export async function paperOfArchive(
  zip: Zip,
  make: PaperMaker,
  by: { shop?: Shop; address?: string } = {},
): Promise<{ pdf: Buffer; archive: ReadArchive }> {
  const archive = await readArchive(zip)
  const { manifest, events } = archive
  const photographs = new Map<string, Uint8Array>()
  for (const { photograph } of manifest.photographs) {
    const bytes = await zip.read(photographName(photograph), MOST_PHOTOGRAPH)
    photographs.set(photograph, await oneAtATime(async () => smaller(await proven(bytes), Number(LONGEST))))
  }
  const pdf = await sealedPaper({ unit: manifest.unit, events, photographs }, make, by.shop, by.address)
  return { pdf, archive }
}

async function sealedPaper(
  what: Pick<ForPaper, 'unit' | 'events' | 'photographs'>,
  make: PaperMaker,
  shop?: Shop,
  address = shop?.address,
): Promise<Buffer> {
  const people = (await shop?.entrance.people()) ?? []
  const key = shop === undefined ? undefined : await shopKey(shop.db)
  const pdf = await make({
    ...what,
    people: Object.fromEntries(people.map(({ id, name }) => [id, name])),
    shop: { ...(address === undefined ? {} : { address }), ...(key === undefined ? {} : { key }) },
  })
  const { unit, events } = what
  const of = { unit, entries: events.length, record: recordHash(events, sha256) }
  return sealed(pdf, of, shop === undefined ? undefined : (hash) => signedBy(shop.db, hash))
}
