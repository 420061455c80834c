export const units = {}
