/** What can be printed: each sheet is made when it is asked for, then opened to print or saved. */
import { useEffect, useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { faultWords } from '../app/faultWords.ts'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { words } from '../words/finish.ts'
import { type PaperName, usualPaper } from './paperSize.ts'
import './Paper.css'

export type Printed = { ok: true; bytes: Uint8Array } | { ok: false; why: string }

export type Sort = {
  name: string
  what: string
  /** Name of the file. */
  file: string
  make: (paper: PaperName) => Promise<Printed>
}

export function Paper({ sorts }: { sorts: readonly Sort[] }) {
  const { settings, choose } = useApp()
  const paper = settings.paper ?? usualPaper(navigator.language)
  return (
    <section class="stack stack--tight paper">
      <h2>{words.paper}</h2>
      <Choice
        label={words.paperSize}
        options={(['A4', 'Letter'] as const).map((value) => ({ value, words: words.papers[value] }))}
        value={paper}
        onChoose={(value) => choose({ paper: value })}
      />
      <ul class="lines">
        {sorts.map((sort) => (
          <li key={`${sort.file} ${paper}`}>
            <OneSort sort={sort} paper={paper} />
          </li>
        ))}
      </ul>
    </section>
  )
}

function OneSort({ sort, paper }: { sort: Sort; paper: PaperName }) {
  const [busy, setBusy] = useState(false)
  const [url, setUrl] = useState<string | null>(null)
  const [fault, setFault] = useState('')
  const link = useRef<HTMLAnchorElement>(null)
  useEffect(() => {
    if (url === null) return
    link.current?.focus()
    return () => URL.revokeObjectURL(url)
  }, [url])

  async function make() {
    setBusy(true)
    setFault('')
    try {
      const made = await sort.make(paper)
      if (made.ok) setUrl(URL.createObjectURL(new Blob([new Uint8Array(made.bytes)], { type: 'application/pdf' })))
      else setFault(words.makingFailed(made.why))
    } catch (error) {
      setFault(words.makingFailed(faultWords(error)))
    } finally {
      setBusy(false)
    }
  }

  return (
    <div class="paper__one">
      <div class="paper__words">
        <h3>{sort.name}</h3>
        <p class="quiet">{sort.what}</p>
        <p class="field__fault" role="alert">
          {fault}
        </p>
      </div>
      {url === null ? (
        <button
          type="button"
          class="button"
          disabled={busy}
          aria-label={words.makeLabel(sort.name)}
          onClick={() => void make()}
        >
          {busy ? words.making : words.make}
        </button>
      ) : (
        <div class="buttons">
          <a ref={link} class="button button--act" href={url} target="_blank" rel="noopener">
            {words.openPaper}
          </a>
          <a class="button" href={url} download={sort.file}>
            <Icon name="folder" size={20} />
            {words.savePaper}
          </a>
        </div>
      )}
    </div>
  )
}
