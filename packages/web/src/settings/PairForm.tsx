export function PairForm(_: Record<string, unknown>) {
  return <p>PairForm</p>
}
