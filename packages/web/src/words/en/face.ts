export const face = {}
