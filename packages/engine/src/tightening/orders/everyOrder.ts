/** Calls back with every order of `count` bolts, each once, in the order of a dictionary. The list is one and the same, changed from call to call. */
export function everyOrder(count: number, visit: (sequence: Int32Array) => void): void {
  const sequence = Int32Array.from({ length: count }, (_, i) => i)
  visit(sequence)
  for (;;) {
    let low = count - 2
    while (low >= 0 && sequence[low]! > sequence[low + 1]!) low--
    if (low < 0) return
    let high = count - 1
    while (sequence[high]! < sequence[low]!) high--
    const kept = sequence[low]!
    sequence[low] = sequence[high]!
    sequence[high] = kept
    sequence.subarray(low + 1).reverse()
    visit(sequence)
  }
}

/** How many orders there are. */
export function ordersOf(count: number): number {
  return count < 2 ? 1 : count * ordersOf(count - 1)
}
