export function TrayPage(_: Record<string, unknown>) {
  return <p>TrayPage</p>
}
