/** Under whose id a device writes: of one person all entries carry the same one, whether the shop has been heard since the page was opened or not. */
type Standing = { signedIn: 'unknown' | 'yes' | 'no'; person: { id: string } | null }

/** Who is signed in here, as far as is known: as the shop says, else as it said last (`kept`); null for nobody. */
export function personHere(status: Standing | null, kept: string | null): string | null {
  if (status?.person != null) return status.person.id
  return status?.signedIn === 'no' ? null : kept
}

/** `own`: the id that the device made for whoever holds it, until it is paired. */
export function writerOf(status: Standing | null, { own, person }: { own: string; person: string | null }): string {
  return personHere(status, person) ?? own
}
