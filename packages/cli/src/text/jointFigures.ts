import { type Interval, writeInterval } from '@gripbook/engine'
import { wrap as wrapWords } from './wrap.ts'

/** A text in lines. A figure keeps its unit on the same line. */
export function wrap(text: string, columns: number, first = ''): string[] {
  return wrapWords(text.replace(/(\d) (%|N·m|lbf·ft|kN|MPa|mm|d)(?![\p{L}])/gu, '$1\u00a0$2'), columns, first)
}

export const newtonMetres = (torque: Interval): string => writeInterval(torque, 'N·m', torque.hi < 100 ? 1 : 0)
export const poundFeet = (torque: Interval): string => writeInterval(torque, 'lbf·ft', torque.hi < 100 ? 1 : 0)
export const kilonewtons = ({ lo, hi }: Interval): string => `${(lo / 1000).toFixed(1)} to ${(hi / 1000).toFixed(1)} kN`
export const percent = (share: number): string => `${Math.round(share * 100)} %`

export function range({ lo, hi }: Interval, decimals: number): string {
  const [least, most] = [lo.toFixed(decimals), hi.toFixed(decimals)]
  return least === most ? least : `${least} to ${most}`
}

/** With one decimal where it has one: a certificate may state 2.5 %. */
export const percentStated = (share: number): string => `${figure(share * 100, 1)} %`

/** A figure with at most `decimals` decimals and no trailing zeros. */
export const figure = (value: number, decimals = 2): string => String(Number(value.toFixed(decimals)))
