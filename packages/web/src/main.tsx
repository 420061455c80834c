import { render } from 'preact'
import { App } from './app/App.tsx'
// The browser's offer comes before anybody opens the settings.
import './device/install.ts'
import './look/tokens.css'
import './look/base.css'
import './look/parts.css'

const page = document.getElementById('page')!
page.replaceChildren()
render(<App />, page)
