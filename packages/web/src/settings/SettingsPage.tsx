/** What is chosen for this device, how it stands with the shop, and for the owner who belongs to it. Everything applies at once and is kept. */
import { useApp } from '../app/context.ts'
import { Shell } from '../app/Shell.tsx'
import { words } from '../words/index.ts'
import { About } from './About.tsx'
import { BenchSettings } from './BenchSettings.tsx'
import { Gloves } from './Gloves.tsx'
import { Installing } from './Installing.tsx'
import { Instruments } from './Instruments.tsx'
import { Shop } from './shop/Shop.tsx'
import { ThisDevice } from './ThisDevice.tsx'
import { UnitsAndLook } from './UnitsAndLook.tsx'
import './SettingsPage.css'

export function SettingsPage() {
  const { book } = useApp()
  const person = book.status?.person ?? null
  return (
    <Shell title={words.settings.title}>
      <div class="settings">
        <div class="stack">
          <UnitsAndLook />
          <Gloves />
          <Instruments />
          <BenchSettings />
        </div>
        <div class="stack">
          <ThisDevice />
          {person !== null && <Shop person={person} />}
          <Installing />
          <About />
        </div>
      </div>
    </Shell>
  )
}
