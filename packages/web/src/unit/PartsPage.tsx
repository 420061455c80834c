export function PartsPage(_: Record<string, unknown>) {
  return <p>PartsPage</p>
}
