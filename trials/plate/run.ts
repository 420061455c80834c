/** The whole comparison: `npm run plate` prints how far Gripbook's plate and CalculiX are apart on an odd cover, over beds and meshes. */
import { THIN_LIMIT } from './byCalculix.ts'
import { whyNoCalculix } from './calculix.ts'
import { oddCover } from './oddCover.ts'
import { type Compared, compare } from './trial.ts'

const BEDS = [0.5, 5, 50]
const SIZES = [10, 5, 2.5]
const { cover } = oddCover

const why = whyNoCalculix()
if (why !== null) {
  process.stdout.write(`${why}\n`)
  process.exit(3)
}
process.stdout.write(
  `An L of ${cover.outline.length} corners, ${cover.thickness} mm with a part of ${cover.regions?.[0]?.thickness} mm, one opening. Differences in % of the largest term: on the grid that Gripbook chose, and on one four times finer.\n`,
)
const head = [
  'bed N/mm³',
  'elements',
  'largest mm/N',
  'worst',
  'diagonal',
  'grid mm',
  'own error',
  'grid/4',
  'unsymmetric',
  'seconds',
]
table('Thin limit: the same theory, so they must meet', THIN_LIMIT)
table("True thickness: CalculiX has shear, Gripbook has not: this is plate theory's own doubt on such a cover", 1)

function table(title: string, thinness: number): void {
  process.stdout.write(`\n${title}\n${row(head)}\n`)
  for (const bed of BEDS)
    for (const size of SIZES) process.stdout.write(`${row(cells(compare(bed, size, thinness)))}\n`)
}

function cells({
  bed,
  elements,
  largest,
  worst,
  diagonal,
  grid,
  ownError,
  finer,
  lopsided,
  seconds,
}: Compared): string[] {
  const share = (percent: number) => percent.toFixed(3)
  const ours = [share(worst), share(diagonal), grid.toFixed(2), share(ownError), share(finer)]
  return [`${bed}`, `${elements}`, largest.toExponential(4), ...ours, share(lopsided), seconds.toFixed(1)]
}

function row(texts: readonly string[]): string {
  return texts.map((text) => text.padStart(13)).join('')
}
