/**
 * While one transaction is on its way to the disk, calls that come in wait and then share the next one: fifty devices that send at once cost a
 * few flushes of the disk, not fifty.
 */
export function gathering<Item, Answer>(
  write: (items: readonly Item[]) => Promise<Answer[]>,
  sizeOf: (item: Item) => number,
  mostTogether: number,
): (item: Item) => Promise<Answer> {
  type Waiting = { item: Item; done: (answer: Answer) => void; failed: (error: unknown) => void }
  const waiting: Waiting[] = []
  let writing = false

  async function writeAll(): Promise<void> {
    writing = true
    while (waiting.length > 0) {
      const group = waiting.splice(0, countThatFits())
      try {
        const answers = await write(group.map(({ item }) => item))
        group.forEach(({ done }, i) => {
          done(answers[i]!)
        })
      } catch (error) {
        for (const { failed } of group) failed(error)
      }
    }
    writing = false
  }

  /** At least one, however big. */
  function countThatFits(): number {
    let size = 0
    const tooMany = waiting.findIndex(({ item }, i) => {
      size += sizeOf(item)
      return i > 0 && size > mostTogether
    })
    return tooMany === -1 ? waiting.length : tooMany
  }

  return (item) =>
    new Promise((done, failed) => {
      waiting.push({ item, done, failed })
      if (!writing) void writeAll()
    })
}
