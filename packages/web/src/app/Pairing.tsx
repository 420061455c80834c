/** A device that was opened by a pairing link is paired at once; the person's name is asked, since it stands under every entry. */
import { useEffect, useState } from 'preact/hooks'
import { Sheet } from '../parts/Sheet.tsx'
import { words } from '../words/index.ts'
import { useApp } from './context.ts'
import { later } from './later.tsx'

const PairForm = later(() => import('../settings/PairForm.tsx').then((part) => part.PairForm))

export function Pairing() {
  const { book, say } = useApp()
  const [code, setCode] = useState(codeInAddress)
  useEffect(() => {
    // The code is used once; it does not stay in the address, where somebody may photograph it.
    if (code !== null) history.replaceState(null, '', location.pathname)
  }, [code])
  if (code === null || book.name !== 'shop') return null
  return (
    <Sheet title={words.settings.pairTitle} onClose={() => setCode(null)}>
      <PairForm
        code={code}
        onPaired={(person) => {
          setCode(null)
          say({ words: words.settings.paired(person.name), tone: 'done' })
        }}
      />
    </Sheet>
  )
}

function codeInAddress(): string | null {
  const code = new URLSearchParams(location.hash.slice(1)).get('pair')
  return code === '' ? null : code
}
