export function SendingSheet(_: Record<string, unknown>) {
  return <p>SendingSheet</p>
}
