export function UnitsPage(_: Record<string, unknown>) {
  return <p>UnitsPage</p>
}
