import type { Device, Status } from '@gripbook/device'
import { useEffect, useState } from 'preact/hooks'

/** How things stand between this device and the shop; null until it was asked. */
export function useStatus(device: Device | null): Status | null {
  const [status, setStatus] = useState<Status | null>(null)
  useEffect(() => (device === null ? undefined : device.watchStatus(setStatus)), [device])
  return status
}
