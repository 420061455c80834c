/** What every part of the page may ask for: where one is, the choices of this device, the record that is open, and how to say that something was done. */
import type { Device, Status } from '@gripbook/device'
import type { Event, Happening } from '@gripbook/record'
import { createContext } from 'preact'
import { useContext } from 'preact/hooks'
import type { Settings } from '../device/settings.ts'
import type { BookName, Route } from './route.ts'

export type Book = {
  name: BookName
  device: Device
  /** Id of the person in entries. */
  who: string
  /** Null until it is known; the practice record has none. */
  status: Status | null
}

export type Notice = {
  words: string
  tone: 'done' | 'fault'
  /** Entries that "undo" takes back. */
  undo?: { unit: string; events: readonly Event[] }
}

export type App = {
  route: Route
  go(route: Route): void
  settings: Settings
  choose(change: Partial<Settings>): void
  book: Book
  say(notice: Notice | null): void
  /**
   * Writes what happened, all of it or nothing, and offers to undo it under `words`. Null when it could not be written: the page has said why,
   * and whoever called keeps what was entered.
   */
  write(unit: string, happenings: readonly Happening[], words?: string): Promise<Event[] | null>
}

export const AppContext = createContext<App | null>(null)

/** What was just said, apart: it comes and goes often, and most of the page does not look at it. */
export const NoticeContext = createContext<{ notice: Notice | null; undo(): Promise<void> } | null>(null)

export function useNotice() {
  return useContext(NoticeContext)!
}

export function useApp(): App {
  return useContext(AppContext)!
}
