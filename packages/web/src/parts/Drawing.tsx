/** A drawing of packages/print in the page. Its text is made there and escaped there. */
export function Drawing({ svg, kind }: { svg: string; kind: 'section' | 'tray' | 'bolt' }) {
  return <div class={`drawing drawing--${kind}`} dangerouslySetInnerHTML={{ __html: svg }} />
}
