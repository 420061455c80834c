/** Watches in the page itself, from outside its program, when a tap came, when the entry was on the disk, the sums asked and answered, and the verdict painted. */

/** Times of the page's own clock in ms. */
export type Sample = { tap: number; written: number; asked: number; answered: number; changed: number; painted: number }

export type Watch = {
  /** What is looked at: the words of the first element that it finds. */
  look(selector: string): void
  /** The sample under way, when it is painted; null when nothing changed in `patience` ms. */
  done(patience: number): Promise<Sample | null>
  workers: string[]
}

declare global {
  interface Window {
    watch: Watch
  }
}

/** To be run before the page's own script. `oneThread`: the engine's worker becomes a frame of the page, since the browser slows no worker. */
export function watchPage({ oneThread }: { oneThread: boolean }): void {
  let selector = ''
  let before = ''
  let sample: Partial<Sample> = {}
  let finished: ((sample: Sample) => void) | null = null
  const workers: string[] = []
  const note = (what: keyof Sample) => {
    sample[what] ??= performance.now()
  }
  const said = () => {
    const found = document.querySelector(selector)
    return found === null ? '' : `${found.getAttribute('aria-label') ?? ''} ${found.textContent}`
  }
  const begin = (event: Event) => {
    before = said()
    sample = { tap: event.timeStamp }
  }
  addEventListener('pointerup', begin, { capture: true })
  addEventListener('keydown', (event) => event.key === 'Enter' && begin(event), { capture: true })

  const transaction = IDBDatabase.prototype.transaction
  IDBDatabase.prototype.transaction = function (stores, mode, options) {
    const begun = transaction.call(this, stores, mode, options)
    if (mode === 'readwrite' && [...begun.objectStoreNames].includes('entries'))
      begun.addEventListener('complete', () => note('written'))
    return begun
  }

  class FrameWorker extends EventTarget {
    onmessage: ((event: MessageEvent) => void) | null = null
    onerror = null
    #frame = document.createElement('iframe')
    #ready: Promise<unknown>
    constructor(url: URL | string) {
      super()
      this.#frame.hidden = true
      document.body.append(this.#frame)
      const inside = this.#frame.contentWindow! as Window & typeof globalThis
      inside.postMessage = (data: unknown) => {
        const { port1, port2 } = new MessageChannel()
        port1.onmessage = (event) => {
          const told = new MessageEvent('message', { data: event.data })
          this.dispatchEvent(told)
          this.onmessage?.(told)
        }
        port2.postMessage(data)
      }
      const script = inside.document.createElement('script')
      script.type = 'module'
      script.src = String(url)
      this.#ready = new Promise((resolve) => script.addEventListener('load', resolve))
      inside.document.head.append(script)
    }
    postMessage(data: unknown): void {
      const copy = structuredClone(data)
      void this.#ready.then(() => {
        const inside = this.#frame.contentWindow! as Window & typeof globalThis
        setTimeout(() => inside.dispatchEvent(new inside.MessageEvent('message', { data: copy })))
      })
    }
    terminate(): void {
      this.#frame.remove()
    }
  }

  const Base = (oneThread ? FrameWorker : Worker) as typeof Worker
  window.Worker = class extends Base {
    constructor(url: URL | string, options?: WorkerOptions) {
      super(url, options)
      workers.push(String(url))
      this.addEventListener('message', () => note('answered'))
    }
    override postMessage(data: unknown): void {
      note('asked')
      super.postMessage(data)
    }
  }

  const changed = () => {
    if (selector === '' || sample.tap === undefined || sample.changed !== undefined || said() === before) return
    note('changed')
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel()
      // The frame is made before the next message is heard.
      port1.onmessage = () => {
        note('painted')
        finished?.(sample as Sample)
      }
      port2.postMessage(null)
    })
  }
  new MutationObserver(changed).observe(document, {
    subtree: true,
    childList: true,
    characterData: true,
    attributes: true,
  })

  window.watch = {
    workers,
    look(at) {
      selector = at
      before = said()
      sample = {}
    },
    done: (patience) =>
      sample.painted !== undefined
        ? Promise.resolve(sample as Sample)
        : new Promise((resolve) => {
            finished = resolve
            setTimeout(() => resolve(null), patience)
          }),
  }
}
