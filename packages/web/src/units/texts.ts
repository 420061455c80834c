/** Texts as they are typed and pasted, made fit for an entry: what does not print would make the entry a faulty one. */

/** A text on one line; undefined when nothing is left of it. */
export function oneLine(text: string): string | undefined {
  return kept(text.replace(/\s+/g, ' '))
}

/** A text that may have lines. */
export function lines(text: string): string | undefined {
  return kept(text.replace(/\r\n?|[\u2028\u2029]/g, '\n'))
}

/** The same with a field's name, to be spread into a body: nothing when there is no text. */
export function given<N extends string>(name: N, text: string | undefined): { [K in N]?: string } {
  return (text === undefined ? {} : { [name]: text }) as { [K in N]?: string }
}

function kept(text: string): string | undefined {
  // Control signs and those that turn the direction of text around; line ends and tabs are left to the caller.
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out.
  const plain = text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g, '')
  // Half a character, as some keyboards leave behind when they delete.
  const trimmed = plain.replace(/\p{Surrogate}/gu, '').trim()
  return trimmed === '' ? undefined : trimmed
}
