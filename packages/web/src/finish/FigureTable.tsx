import { Icon, type IconName } from '../look/icons.tsx'
import { useNames } from '../unit/useNames.ts'
import { words } from '../words/finish.ts'
import { changeOf, type Figure, figureText, type Lies, type Limit, lies, type Row, type Stage } from './figures.ts'

const SIGNS: Record<Lies, IconName> = { inside: 'tick', edge: 'question', outside: 'cross', 'other unit': 'question' }
/** A reading while it is open stands below the one after. */
const COLUMNS: readonly Stage[] = ['before', 'after']
const TONES: Record<Lies, string> = { inside: 'fits', edge: 'may', outside: 'cannot', 'other unit': 'may' }

type Props = {
  rows: readonly Row[]
  faceName: (id: string) => string
  current: string | null
  onPick: (reading: string) => void
}

/** Before, after, limit; what is outside says so by its sign and in words. */
export function FigureTable({ rows, faceName, current, onPick }: Props) {
  const nameOf = useNames()
  return (
    <table class="figures">
      <caption class="unseen">{words.table}</caption>
      <thead>
        <tr>
          <th scope="col">{words.figure1}</th>
          {COLUMNS.map((stage) => (
            <th key={stage} scope="col">
              {words.stagesShort[stage]}
            </th>
          ))}
          <th scope="col">{words.limit}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <FigureRow
            key={row.reading}
            row={row}
            faceName={faceName}
            nameOf={nameOf}
            current={row.reading === current}
            onPick={onPick}
          />
        ))}
      </tbody>
    </table>
  )
}

type RowProps = {
  row: Row
  faceName: (id: string) => string
  nameOf: (who: string) => string
  current: boolean
  onPick: (reading: string) => void
}

function FigureRow({ row, faceName, nameOf, current, onPick }: RowProps) {
  const change = changeOf(row)
  return (
    <tr class={current ? 'figures__row figures__row--now' : 'figures__row'}>
      <th scope="row">
        <button
          type="button"
          class="figures__pick"
          aria-current={current ? 'true' : undefined}
          aria-label={words.takeThis(row.reading)}
          onClick={() => onPick(row.reading)}
        >
          <span dir="auto">{row.reading}</span>
          <span class="quiet" dir="auto">
            {[row.unit, ...(row.face === null ? [] : [faceName(row.face)])].join(' · ')}
          </span>
        </button>
        {row.waived !== null && (
          <span class="figures__waived sign sign--may" dir="auto">
            {words.waivedBy(nameOf(row.waived.who), row.waived.reason)}
          </span>
        )}
      </th>
      {COLUMNS.map((stage) => (
        <td key={stage}>
          <Cell figure={row[stage]} unit={row.unit} limit={row.limit} />
          {stage === 'after' && row.old !== null && (
            <span class="figures__change quiet" dir="auto">
              {words.oldEnd(bare(row.old.figure, row.unit), faceName(row.old.face))}
            </span>
          )}
          {stage === 'after' && row.during !== null && (
            <span class="figures__change quiet">{words.whileOpen(bare(row.during, row.unit))}</span>
          )}
          {stage === 'after' && change !== null && change !== 0 && (
            <span class="figures__change quiet">{words.change(signed(change))}</span>
          )}
        </td>
      ))}
      <td dir="auto">
        {row.limit === null ? <span class="quiet">{words.noLimit}</span> : <LimitCell limit={row.limit} />}
      </td>
    </tr>
  )
}

function Cell({ figure, unit, limit }: { figure: Figure | null; unit: string; limit: Limit | null }) {
  if (figure === null) return <span class="quiet">{words.none}</span>
  const at = lies(figure, limit)
  return (
    <>
      <span class={at === 'outside' ? 'figures__figure figures__figure--outside' : 'figures__figure'}>
        {bare(figure, unit)}
      </span>
      {at !== null && (
        <span class={`figures__lies sign sign--${TONES[at]}`}>
          <Icon name={SIGNS[at]} size={14} />
          {words.lies[at]}
        </span>
      )}
    </>
  )
}

function LimitCell({ limit }: { limit: Limit }) {
  return (
    <>
      {limitText(limit)}
      <span class="figures__change quiet" dir="auto">
        {limit.source}
      </span>
    </>
  )
}

export function limitText({ least, most, unit }: Limit): string {
  const text = (value: number | undefined) => (value === undefined ? null : String(value))
  return words.limitText(text(least), text(most), unit)
}

function signed(change: number): string {
  return change > 0 ? `+${change}` : `−${Math.abs(change)}`
}

/** The unit stands beside the name; another one is told. */
function bare(figure: Figure, unit: string): string {
  const text = figureText(figure)
  return figure.unit === unit ? text.slice(0, -unit.length).trimEnd() : text
}
