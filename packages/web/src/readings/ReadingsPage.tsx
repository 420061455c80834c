export function ReadingsPage(_: Record<string, unknown>) {
  return <p>ReadingsPage</p>
}
