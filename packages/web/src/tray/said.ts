/** What the answer says of a tray, in the order in which hands need it. */
import type { FaceAnswer } from '@gripbook/engine'

export type TrayLine =
  /** Holes that want a bolt which is not there, of one size. */
  | { is: 'wanted'; thread: string; lengths: number[]; holes: string[] }
  | { is: 'left over'; kind: string; count: number; fits: readonly string[] }
  | { is: 'short'; count: number }
  | { is: 'all'; holes: number }

export function trayLines(answer: FaceAnswer): TrayLine[] {
  const wanted = new Map<string, Extract<TrayLine, { is: 'wanted' }>>()
  for (const { hole, thread, lengths } of answer.wanted) {
    const key = `${thread} ${lengths.join(' ')}`
    const line = wanted.get(key)
    if (line === undefined) wanted.set(key, { is: 'wanted', thread, lengths, holes: [hole] })
    else line.holes.push(hole)
  }
  const leftOver = Object.entries(answer.leftOver)
    .filter(([, count]) => count > 0)
    .map(([kind, count]): TrayLine => ({ is: 'left over', kind, count, fits: answer.leftOverFits?.[kind] ?? [] }))
  const lines: TrayLine[] = [...wanted.values(), ...leftOver]
  if (answer.missing > answer.wanted.length) lines.push({ is: 'short', count: answer.missing - answer.wanted.length })
  return lines.length > 0 ? lines : [{ is: 'all', holes: Object.keys(answer.holes).length }]
}
