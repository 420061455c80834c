export const readings = {}
