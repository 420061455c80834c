import { expect, test } from 'vitest'
import { eventOf, eventStream, type StreamEvent } from './stream.ts'

test('an event is read from its lines, whatever ends them', () => {
  expect(eventOf('id: 7\nevent: entries\ndata: {"a":\ndata: 1}')).toEqual({ name: 'entries', data: '{"a":\n1}' })
  expect(eventOf('event:beat\r\ndata:{}')).toEqual({ name: 'beat', data: '{}' })
  expect(eventOf(': a comment')).toBeNull()
  expect(eventOf('retry: 2000')).toBeNull()
  expect(eventOf('data')).toEqual({ name: 'message', data: '' })
})

test('events come whole however the bytes are cut, and what is unfinished at the end is left out', async () => {
  const bytes = new TextEncoder().encode('event: entries\ndata: Größe ☃\n\n: beat\n\ndata: two\n\ndata: unfinished')
  for (const size of [1, 2, 3, 7, 1_000]) {
    const body = new ReadableStream<Uint8Array>({
      start(controller) {
        for (let at = 0; at < bytes.length; at += size) controller.enqueue(bytes.slice(at, at + size))
        controller.close()
      },
    })
    const events: StreamEvent[] = []
    for await (const event of eventStream(body)) events.push(event)
    expect(events).toEqual([
      { name: 'entries', data: 'Größe ☃' },
      { name: 'message', data: 'two' },
    ])
  }
})
