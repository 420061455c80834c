export const joint = {}
