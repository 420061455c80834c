export const story = {}
