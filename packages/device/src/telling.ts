/** Reads and tells, as often as things change and no more often than reading takes. */
export type Telling = { tell: () => void; stop: () => void }

/** Calls that come while it reads make it read once more, not once each. What cannot be read goes to `failed`. */
export function oneAtATime<T>(
  read: () => Promise<T>,
  listener: (value: T) => void,
  failed: (error: unknown) => void = () => {},
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
