/** Reads and tells, as often as things change and no more often than reading takes. */
export type Telling = { tell: () => void; stop: () => void }

/**
 * Calls that come while it reads make it read once more, not once each. What cannot be read goes to `failed`. With a `rest` in ms it waits so
 * long after each telling before it reads again: for what may come a little late and would be in the way of what may not.
 */
export function oneAtATime<T>(
  read: () => Promise<T>,
  listener: (value: T) => void,
  failed: (error: unknown) => void = () => {},
  rest = 0,
): Telling {
  let reading = false
  let again = false
  let on = true
  async function run(): Promise<void> {
    reading = true
    do {
      again = false
      const found = await read().then(
        (value) => () => listener(value),
        (error: unknown) => () => failed(error),
      )
      try {
        if (on) found()
      } catch (error) {
        // A listener's own fault is its page's to see, and does not end the telling.
        reportError(error)
      }
      if (rest > 0 && on) await new Promise((resolve) => setTimeout(resolve, rest))
    } while (again && on)
    reading = false
  }
  return {
    tell() {
      again = true
      if (!reading) void run()
    },
    stop() {
      on = false
    },
  }
}
