/** Boxes in a column that want to stand at given heights and must not meet. */
export type Wish = { centre: number; height: number }

/**
 * Tops of the boxes in the order given, each as near to its wish as the others allow (least squares), none above `top`, `gap` px apart.
 * Wishes must be sorted by centre. Pooling of adjacent blocks: boxes that would meet move as one, to the mean of what they want.
 */
export function spread(wishes: readonly Wish[], top: number, gap: number): number[] {
  const blocks: { sum: number; count: number }[] = []
  const offsets: number[] = []
  let offset = 0
  for (const { centre, height } of wishes) {
    offsets.push(offset)
    blocks.push({ sum: centre - height / 2 - offset, count: 1 })
    offset += height + gap
    while (blocks.length > 1) {
      const [before, last] = [blocks[blocks.length - 2]!, blocks[blocks.length - 1]!]
      if (before.sum / before.count <= last.sum / last.count) break
      blocks.pop()
      before.sum += last.sum
      before.count += last.count
    }
  }
  const starts = blocks.flatMap(({ sum, count }) => new Array<number>(count).fill(Math.max(top, sum / count)))
  return starts.map((start, i) => start + offsets[i]!)
}
