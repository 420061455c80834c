/** Reads a drawing back for checks: a small strict XML reader and the boxes of its texts. */
export type Node = { name: string; attributes: Record<string, string>; children: Node[]; text: string }

const ENTITIES: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" }

function plain(text: string): string {
  if (/[<>]/.test(text)) throw new Error(`bare bracket in "${text}"`)
  return text.replace(/&([^;]{0,8})(;?)/g, (whole, name, end) => {
    const mark = end === ';' ? ENTITIES[name] : undefined
    if (mark === undefined) throw new Error(`bad entity ${whole}`)
    return mark
  })
}

/** Throws where the text is not well-formed XML (elements and attributes only, which is all that a drawing has). */
export function readSvg(source: string): Node {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: XML forbids these
  if (/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/.test(source))
    throw new Error('a character that XML forbids')
  const root: Node = { name: '', attributes: {}, children: [], text: '' }
  const open = [root]
  let at = 0
  const tag = /<(\/?)([a-zA-Z]+)((?:\s+[a-zA-Z0-9:-]+="[^"<]*")*)(\/?)>/y
  while (at < source.length) {
    const next = source.indexOf('<', at)
    const end = next === -1 ? source.length : next
    open.at(-1)!.text += plain(source.slice(at, end))
    if (next === -1) break
    tag.lastIndex = next
    const found = tag.exec(source)
    if (!found) throw new Error(`no tag at ${source.slice(next, next + 60)}`)
    at = tag.lastIndex
    const [, closing, name, rest, alone] = found
    if (closing) {
      if (open.pop()!.name !== name) throw new Error(`</${name}> closes another element`)
      continue
    }
    const attributes: Record<string, string> = {}
    for (const [, key, value] of rest!.matchAll(/([a-zA-Z0-9:-]+)="([^"]*)"/g)) {
      if (key! in attributes) throw new Error(`attribute ${key} twice`)
      attributes[key!] = plain(value!)
    }
    const node: Node = { name: name!, attributes, children: [], text: '' }
    open.at(-1)!.children.push(node)
    if (!alone) open.push(node)
  }
  if (open.length !== 1 || root.children.length !== 1) throw new Error('elements left open')
  return root.children[0]!
}

export function* everyNode(node: Node): Generator<Node> {
  yield node
  for (const child of node.children) yield* everyNode(child)
}

export function parts(node: Node, part: string): Node[] {
  return [...everyNode(node)].filter(({ attributes }) => attributes['data-part'] === part)
}

export type Box = { text: string; left: number; right: number; top: number; foot: number }

/** Boxes of all texts in px, as wide as the drawing reckons them. */
export function textBoxes(node: Node): Box[] {
  return [...everyNode(node)]
    .filter(({ name }) => name === 'text')
    .map(({ attributes: a, text }) => {
      const [x, y, width, size] = [a.x, a.y, a['data-width'], a['font-size']].map(Number) as [
        number,
        number,
        number,
        number,
      ]
      const left = a['text-anchor'] === 'end' ? x - width : a['text-anchor'] === 'middle' ? x - width / 2 : x
      return { text, left, right: left + width, top: y - 0.78 * size, foot: y + 0.22 * size }
    })
}

/** Pairs of texts that overlap. */
export function collisions(boxes: readonly Box[]): string[] {
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.foot && b.top < a.foot)
      .map((b) => `"${a.text}" and "${b.text}"`),
  )
}
