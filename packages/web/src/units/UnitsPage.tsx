/** The first page: the units on this device and in the shop, and the ways to another one. */
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Shell } from '../app/Shell.tsx'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'
import { Foot } from './Foot.tsx'
import { Go } from './Go.tsx'
import { ImportSheet } from './ImportSheet.tsx'
import { UnitCard } from './UnitCard.tsx'
import { found, unitLines } from './unitLines.ts'
import { usePractice } from './usePractice.ts'
import { useShopUnits } from './useShopUnits.ts'
import { useUnitsHere } from './useUnitsHere.ts'
import './UnitsPage.css'

export function UnitsPage() {
  const { book } = useApp()
  const here = useUnitsHere(book.device, book.status)
  const shop = useShopUnits(book.status?.signedIn === 'yes')
  const [query, setQuery] = useState('')
  const [sheet, setSheet] = useState(false)
  const lines = unitLines(here.lines, here.waiting, shop.units)
  const shown = found(lines, query)
  const first = here.read && lines.length === 0 && !shop.busy
  return (
    <Shell title={words.units.title} actions={<SettingsLink />}>
      <div class="units">
        <WasDeleted />
        {first ? (
          <FirstUse onImport={() => setSheet(true)} />
        ) : (
          <>
            <div class="units__tools">
              <Search query={query} onQuery={setQuery} />
              <button type="button" class="button" onClick={() => setSheet(true)}>
                {words.units.more}
              </button>
            </div>
            <h2 class="unseen">{words.units.list}</h2>
            {query !== '' && shown.length === 0 && here.read && (
              <div class="empty" role="status">
                <p dir="auto">{words.units.foundNone(query)}</p>
                {shop.more && <p>{words.units.foundNoneMore}</p>}
                <button type="button" class="button" onClick={() => setQuery('')}>
                  {words.units.clearSearch}
                </button>
              </div>
            )}
            <ul class="units__list">
              {shown.map((line) => (
                <li key={line.unit}>
                  <UnitCard line={line} />
                </li>
              ))}
              {query === '' && (
                <li>
                  <PracticeCard />
                </li>
              )}
            </ul>
            {!here.read && <p class="quiet">{words.units.reading}</p>}
            {shop.failed && <p class="quiet">{words.units.shopAway}</p>}
            {shop.more && (
              <button type="button" class="button" disabled={shop.busy} onClick={shop.showMore}>
                {shop.busy ? words.units.showingMore : words.units.showMore}
              </button>
            )}
          </>
        )}
      </div>
      <Foot>
        <Go to={{ at: 'take-in' }} class="button button--act">
          <Icon name="plus" />
          {words.units.takeIn}
        </Go>
      </Foot>
      {sheet && <ImportSheet onClose={() => setSheet(false)} />}
    </Shell>
  )
}

function SettingsLink() {
  return (
    <Go to={{ at: 'settings' }} class="shell__back" label={words.units.settings}>
      <Icon name="gear" />
    </Go>
  )
}

function Search({ query, onQuery }: { query: string; onQuery: (query: string) => void }) {
  return (
    <div class="field">
      <label class="field__label" for="search-units">
        {words.units.search}
      </label>
      <div class="units__search">
        <Icon name="search" />
        <input
          id="search-units"
          class="input"
          type="search"
          dir="auto"
          autocomplete="off"
          enterkeyhint="search"
          placeholder={words.units.searchHint}
          value={query}
          onInput={(event) => onQuery(event.currentTarget.value)}
        />
      </div>
    </div>
  )
}

function FirstUse({ onImport }: { onImport: () => void }) {
  const { busy, open } = usePractice()
  return (
    <div class="empty column">
      <h2>{words.units.firstTitle}</h2>
      <p>{words.units.firstWhat}</p>
      <p>{words.units.firstHow}</p>
      <button type="button" class="button button--act" disabled={busy} onClick={() => void open()}>
        <Icon name="book" />
        {busy ? words.units.practiceMaking : words.units.practiceOpen}
      </button>
      <button type="button" class="button button--plain" onClick={onImport}>
        {words.units.importTitle}
      </button>
    </div>
  )
}

function PracticeCard() {
  const { busy, open } = usePractice()
  return (
    <div class="unit-card">
      <h2 class="unit-card__name">{words.units.practice}</h2>
      <p>{words.units.practiceWhat}</p>
      <div>
        <button type="button" class="button" disabled={busy} onClick={() => void open()}>
          <Icon name="book" />
          {busy ? words.units.practiceMaking : words.units.practiceOpen}
        </button>
      </div>
    </div>
  )
}

/** Told once: what was not sent then is gone, and nothing of it will come back by itself. */
function WasDeleted() {
  const { book, settings, choose } = useApp()
  const name = `deleted ${book.status?.replaces}`
  if (!book.status?.replaces || settings.seen.includes(name)) return null
  return (
    <div class="caution" role="note">
      <Icon name="warning" />
      <div class="stack stack--tight">
        <h2>{words.units.replacedTitle}</h2>
        <p>{words.units.replaced}</p>
        <div>
          <button type="button" class="button" onClick={() => choose({ seen: [...settings.seen, name] })}>
            {words.units.replacedSeen}
          </button>
        </div>
      </div>
    </div>
  )
}
