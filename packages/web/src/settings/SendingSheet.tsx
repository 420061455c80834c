export function SendingSheet(_: { onClose: () => void }) {
  return null
}
