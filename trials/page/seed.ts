/** A unit put into the record of a device as if it had been entered there, with photographs of its faces. */
import type { Unit } from '@gripbook/engine'
import { facePhotographed, type Happening, happeningsOf, sha256 } from '@gripbook/record'
import type { Page } from 'playwright-core'
import { oneScript } from '../../packages/device/src/testing/browser.ts'
import type { Beside } from './inPage.ts'

/** `in`: which face it shows; its size in pixels. */
export type SeededPhotograph = { face: string; bytes: Buffer; width: number; height: number }

let script: Promise<string> | null = null

/** Puts `window.beside` into a page that is open: past the policy for scripts, which is the page's own and stays as it is. */
export async function standBeside(page: Page): Promise<void> {
  script ??= oneScript(new URL('inPage.ts', import.meta.url), 'iife')
  await page.evaluate(`(() => {${await script}})()`)
}

/** Errors: what the device throws, for a unit that the record does not take. */
export async function seedUnit(
  page: Page,
  id: string,
  unit: Unit,
  { photographs = [], more = [] }: { photographs?: readonly SeededPhotograph[]; more?: readonly Happening[] } = {},
): Promise<void> {
  await standBeside(page)
  const happenings = [
    ...happeningsOf(unit),
    ...photographs.map(({ face, bytes, width, height }) =>
      facePhotographed({ face, photograph: sha256(bytes), width, height }),
    ),
    ...more,
  ]
  await page.evaluate(
    ({ id, happenings, bytes }) => (window as unknown as { beside: Beside }).beside.keep(id, happenings, bytes),
    { id, happenings: JSON.stringify(happenings), bytes: photographs.map(({ bytes }) => bytes.toString('base64')) },
  )
}
