import type { FoldedUnit } from '@gripbook/record'
import { useApp } from '../app/context.ts'
import { standingOf } from '../unit/standing.ts'
import { useNames } from '../unit/useNames.ts'
import { words } from '../words/finish.ts'
import { Paper, type Printed } from './Paper.tsx'

/** The build record of a unit. */
export function RecordPaper({ folded }: { folded: FoldedUnit }) {
  const { book } = useApp()
  const nameOf = useNames()

  async function photographOf(photograph: string): Promise<Blob | null> {
    const here = await book.device.photographOf(photograph)
    if (here !== null) return new Blob([here])
    if (book.name !== 'shop') return null
    const answer = await fetch(`/api/photographs/${photograph}?size=1280`).catch(() => null)
    return answer?.ok === true ? answer.blob() : null
  }

  const paired = book.name === 'shop' && book.status?.signedIn === 'yes'

  return (
    <Paper
      sorts={[
        ...(paired
          ? [
              {
                name: words.sealedRecord,
                what: words.sealedRecordWhat,
                file: words.fileName(words.sealedRecord, folded.unit.name ?? folded.id),
                make: () => sealedRecord(folded.id),
              },
            ]
          : []),
        {
          name: words.buildRecord,
          what: words.buildRecordWhat,
          file: words.fileName(words.buildRecord, folded.unit.name ?? folded.id),
          async make(paper) {
            const { recordPaper } = await import('./makePaper.ts')
            const people = Object.fromEntries(standingOf(folded).map(({ who }) => [who, nameOf(who)]))
            const shop = paired ? { address: location.origin } : {}
            return { ok: true, bytes: await recordPaper(folded, { paper, people, shop, photographOf }) }
          },
        },
      ]}
    />
  )
}

/** What the shop prints, with its seal; it is of the entries that have reached it. */
async function sealedRecord(unit: string): Promise<Printed> {
  const answer = await fetch(`/api/units/${unit}/record`, { cache: 'no-store' }).catch(() => null)
  if (answer?.ok !== true) return { ok: false, why: words.noSealedRecord }
  return { ok: true, bytes: new Uint8Array(await answer.arrayBuffer()) }
}
