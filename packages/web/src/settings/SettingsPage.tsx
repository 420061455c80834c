export function SettingsPage(_: Record<string, unknown>) {
  return <p>SettingsPage</p>
}
