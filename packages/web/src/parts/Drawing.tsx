/** A drawing of packages/print in the page. Its text is made there and escaped there. */
export function Drawing({ svg, kind }: { svg: string; kind: 'section' | 'tray' }) {
  // biome-ignore lint/security/noDangerouslySetInnerHtml: the drawing is SVG text of our own; every name in it is escaped where it is drawn.
  return <div class={`drawing drawing--${kind}`} dangerouslySetInnerHTML={{ __html: svg }} />
}
