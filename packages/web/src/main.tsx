import { render } from 'preact'
import { App } from './app/App.tsx'
import './look/tokens.css'
import './look/base.css'
import './look/parts.css'

const page = document.getElementById('page')!
page.replaceChildren()
render(<App />, page)
