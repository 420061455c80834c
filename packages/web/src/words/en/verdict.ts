export const verdict = {}
