/** The page as a whole: opens the record, keeps the address and the choices, draws the screen that the address names. */
import type { Device } from '@gripbook/device'
import { type Happening, undone } from '@gripbook/record'
import { useCallback, useEffect, useMemo, useState } from 'preact/hooks'
import { openBook } from '../device/books.ts'
import { newId } from '../device/newId.ts'
import { readSettings, type Settings, writeSettings } from '../device/settings.ts'
import { FacePage } from '../face/FacePage.tsx'
import { ReadingsPage } from '../readings/ReadingsPage.tsx'
import { TrayPage } from '../tray/TrayPage.tsx'
import { UnitPage } from '../unit/UnitPage.tsx'
import { TakeInPage } from '../units/TakeInPage.tsx'
import { UnitsPage } from '../units/UnitsPage.tsx'
import { words } from '../words/index.ts'
import { sayAhead } from './ahead.ts'
import { AppContext, type App as Around, type Notice, NoticeContext } from './context.ts'
import { faultWords } from './faultWords.ts'
import { later } from './later.tsx'
import { applyLook } from './look.ts'
import { NoticeBar } from './NoticeBar.tsx'
import { Pairing } from './Pairing.tsx'
import { type BookName, pathOf, type Route, readRoute } from './route.ts'
import { UpdateBar } from './UpdateBar.tsx'
import { useStatus } from './useStatus.ts'
import { personHere, writerOf } from './writer.ts'

const SettingsPage = later(() => import('../settings/SettingsPage.tsx').then((part) => part.SettingsPage))
const PartsPage = later(() => import('../unit/PartsPage.tsx').then((part) => part.PartsPage))
const FinishPage = later(() => import('../finish/FinishPage.tsx').then((part) => part.FinishPage))
const FiguresPage = later(() => import('../finish/FiguresPage.tsx').then((part) => part.FiguresPage))
const StoryPage = later(() => import('../unit/StoryPage.tsx').then((part) => part.StoryPage))
const BenchPage = later(() => import('../bench/BenchPage.tsx').then((part) => part.BenchPage))
const TighteningPage = later(() => import('../tightening/TighteningPage.tsx').then((part) => part.TighteningPage))

export function App() {
  const [route, setRoute] = useState(() => readRoute(location.pathname))
  const [settings, setSettings] = useState(ownSettings)
  const [notice, say] = useState<Notice | null>(null)
  const name: BookName = 'book' in route ? route.book : 'shop'
  const { device, fault } = useBook(name)
  const status = useStatus(device)

  useEffect(() => applyLook(settings), [settings])
  useEffect(() => {
    const moved = () => setRoute(readRoute(location.pathname))
    addEventListener('popstate', moved)
    return () => removeEventListener('popstate', moved)
  }, [])

  const go = useCallback((to: Route) => {
    history.pushState(null, '', pathOf(to))
    setRoute(to)
    scrollTo(0, 0)
  }, [])
  const choose = useCallback((change: Partial<Settings>) => {
    setSettings((now) => {
      const next = { ...now, ...change }
      writeSettings(next)
      return next
    })
  }, [])

  // Kept for the next time that the page is opened without signal.
  const person = name === 'shop' ? personHere(status, settings.person) : settings.person
  useEffect(() => {
    if (person !== settings.person) choose({ person })
  }, [person, settings.person, choose])

  const around = useMemo((): Around | null => {
    if (device === null) return null
    const own = settings.own!.id
    const who = name === 'shop' ? writerOf(status, { own, person: settings.person }) : own
    const write: Around['write'] = async (unit, happenings: readonly Happening[], said) => {
      if (happenings.length === 0) return []
      const ended = sayAhead(unit, who, happenings)
      try {
        // What was said ahead is drawn and asked about first; the disk comes right behind.
        await Promise.resolve()
        const events = await device.appendAll(unit, who, happenings)
        ended(events)
        if (said !== undefined) say({ words: said, tone: 'done', undo: { unit, events } })
        return events
      } catch (error) {
        ended(null)
        say({ words: faultWords(error), tone: 'fault' })
        return null
      }
    }
    return {
      route,
      go,
      settings,
      choose,
      book: { name, device, who, status: name === 'shop' ? status : null },
      say,
      write,
    }
  }, [device, name, status, settings, route, go, choose])

  const said = useMemo(() => {
    async function undo() {
      if (around === null || notice?.undo === undefined) return
      const { unit, events } = notice.undo
      const back = [...events].reverse().map(({ id }) => undone({ event: id }))
      if ((await around.write(unit, back)) !== null) say({ words: words.shell.isUndone, tone: 'done' })
    }
    return { notice, undo }
  }, [notice, around])

  if (fault !== null) return <CannotOpen words={fault} />
  if (around === null) return <p class="starting">{words.shell.opening}</p>
  return (
    <AppContext.Provider value={around}>
      <Screen route={route} />
      <NoticeContext.Provider value={said}>
        <NoticeBar />
      </NoticeContext.Provider>
      <UpdateBar />
      <Pairing />
    </AppContext.Provider>
  )
}

function Screen({ route }: { route: Route }) {
  switch (route.at) {
    case 'units':
      return <UnitsPage />
    case 'take-in':
      return <TakeInPage />
    case 'settings':
      return <SettingsPage />
    case 'unit':
      return <UnitPage key={route.unit} unit={route.unit} />
    case 'story':
      return <StoryPage key={route.unit} unit={route.unit} />
    case 'parts':
      return <PartsPage key={route.unit} unit={route.unit} />
    case 'finish':
      return <FinishPage key={route.unit} unit={route.unit} />
    case 'figures':
      return <FiguresPage key={route.unit} unit={route.unit} />
    case 'face':
      return <FacePage key={`${route.unit} ${route.face}`} {...route} />
    case 'tray':
      return <TrayPage key={`${route.unit} ${route.face}`} {...route} />
    case 'readings':
      return <ReadingsPage key={`${route.unit} ${route.face}`} {...route} />
    case 'tightening':
      return <TighteningPage key={`${route.unit} ${route.face}`} {...route} />
    case 'bench':
      return <BenchPage key={`${route.unit} ${route.face}`} {...route} />
  }
}

/** The record of that name; the one before stays open, since it goes on sending. */
function useBook(name: BookName): { device: Device | null; fault: string | null } {
  const [open, setOpen] = useState<Partial<Record<BookName, Device>>>({})
  const [fault, setFault] = useState<string | null>(null)
  useEffect(() => {
    openBook(name).then(
      (device) => setOpen((before) => ({ ...before, [name]: device })),
      (error: unknown) => setFault(faultWords(error)),
    )
  }, [name])
  return { device: open[name] ?? null, fault }
}

/** One who has never been here gets the id under which this device writes until it is paired. */
function ownSettings(): Settings {
  const kept = readSettings()
  if (kept.own !== null) return kept
  const settings = { ...kept, own: { id: newId(), name: '' } }
  writeSettings(settings)
  return settings
}

function CannotOpen({ words: why }: { words: string }) {
  return (
    <main class="cannot-open">
      <h1>{words.shell.cannotOpen}</h1>
      <p>{why}</p>
      <p>{words.shell.cannotOpenWhat}</p>
      <button type="button" class="button button--act" onClick={() => location.reload()}>
        {words.shell.tryAgain}
      </button>
    </main>
  )
}
