/** A prefix for ids that is safe in an id and in url(#…), also when it comes from a name that a person typed; different names stay different. */
export function safePrefix(prefix: string): string {
  return `g${prefix.replace(/[^A-Za-z0-9-]/gu, (mark) => `_${mark.codePointAt(0)!.toString(36)}_`)}`
}
