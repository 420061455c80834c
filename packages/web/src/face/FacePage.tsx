export function FacePage(_: Record<string, unknown>) {
  return <p>FacePage</p>
}
