/** Server-sent events as they come (WHATWG HTML, 9.2.6): `event` and `data` are read, the rest passed over. */
export type StreamEvent = { name: string; data: string }

/** More text than this without an end of an event is no stream of the shop's. */
const MOST = 64_000_000

export async function* eventStream(body: ReadableStream<Uint8Array>): AsyncGenerator<StreamEvent> {
  const reader = body.getReader()
  const utf8 = new TextDecoder()
  let rest = ''
  try {
    for (;;) {
      const { done, value } = await reader.read()
      if (done) return
      rest += utf8.decode(value, { stream: true })
      const events = rest.split(/\r\n\r\n|\n\n|\r\r/)
      rest = events.pop()!
      if (rest.length > MOST) return
      for (const text of events) {
        const event = eventOf(text)
        if (event !== null) yield event
      }
    }
  } finally {
    await reader.cancel().catch(() => {})
  }
}

/** One event from its lines; null for one without data, which says nothing. */
export function eventOf(text: string): StreamEvent | null {
  let name = 'message'
  const data: string[] = []
  for (const line of text.split(/\r\n|\n|\r/)) {
    const [, field, value = ''] = /^([^:]*)(?:: ?(.*))?$/s.exec(line)!
    if (field === 'event') name = value
    if (field === 'data') data.push(value)
  }
  return data.length === 0 ? null : { name, data: data.join('\n') }
}
