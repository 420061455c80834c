/** A queue that gives the least first; of equal ones any. */
export class Heap<T> {
  readonly #items: T[] = []
  readonly #compare: (a: T, b: T) => number
  constructor(compare: (a: T, b: T) => number) {
    this.#compare = compare
  }
  push(item: T): void {
    const items = this.#items
    let at = items.length
    items.push(item)
    while (at > 0) {
      const up = (at - 1) >> 1
      if (this.#compare(item, items[up]!) >= 0) break
      items[at] = items[up]!
      at = up
    }
    items[at] = item
  }
  pop(): T | undefined {
    const items = this.#items
    const least = items[0]
    const last = items.pop()
    if (last === undefined || items.length === 0) return least
    let at = 0
    for (;;) {
      let down = 2 * at + 1
      if (down >= items.length) break
      if (down + 1 < items.length && this.#compare(items[down + 1]!, items[down]!) < 0) down += 1
      if (this.#compare(last, items[down]!) <= 0) break
      items[at] = items[down]!
      at = down
    }
    items[at] = last
    return least
  }
}
