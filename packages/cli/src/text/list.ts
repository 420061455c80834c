/** "4", "4 and 9", "4, 9 and 12". */
export function listed(names: readonly string[], joint: 'and' | 'or' = 'and'): string {
  if (names.length < 2) return names[0] ?? ''
  return `${names.slice(0, -1).join(', ')} ${joint} ${names.at(-1)}`
}

/** The text with a full stop last, unless it has its own end. Nothing is made a capital: the text may begin with a name from the file. */
export function stopped(text: string): string {
  return text === '' || /[.?!]$/.test(text) ? text : `${text}.`
}
