export function UnitPage(_: Record<string, unknown>) {
  return <p>UnitPage</p>
}
