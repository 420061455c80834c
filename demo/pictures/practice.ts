export function practice(_u: unknown) { return {} }
