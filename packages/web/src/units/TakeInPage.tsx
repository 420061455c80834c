export function TakeInPage(_: Record<string, unknown>) {
  return <p>TakeInPage</p>
}
