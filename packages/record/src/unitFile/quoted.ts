const LONGEST = 60

/**
 * A text from the file in double quotes, cut where it is long. Signs that a terminal would act on, or that would turn the line around, are
 * written as escapes: a file must not be able to paint on the screen of whoever reads its faults.
 */
export function quoted(text: string): string {
  const short = text.length > LONGEST ? `${text.slice(0, LONGEST - 3)}…` : text
  return JSON.stringify(short).replace(
    /[\u007f-\u009f\u2028-\u202e\u2066-\u2069]/g,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )
}
