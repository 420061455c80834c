/** A transaction that lost against another one is done again: the row lock leaves few, engines that order everything optimistically leave more. */
const TRIES = 20
const SERIALIZATION_FAILURE = '40001'
const DEADLOCK = '40P01'
export const UNIQUE_VIOLATION = '23505'

export async function again<T>(work: () => Promise<T>): Promise<T> {
  for (let tried = 1; ; tried++) {
    try {
      return await work()
    } catch (error) {
      const { code } = error as { code?: string }
      const lost = code === SERIALIZATION_FAILURE || code === DEADLOCK || code === UNIQUE_VIOLATION
      if (!lost || tried === TRIES) throw error
      await new Promise((done) => setTimeout(done, Math.random() * 10 * tried))
    }
  }
}

/** What a transaction throws that finds out by itself that it lost. */
export function overtaken(): Error {
  return Object.assign(new Error('overtaken by another process'), { code: SERIALIZATION_FAILURE })
}
