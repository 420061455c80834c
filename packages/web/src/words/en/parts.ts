export const parts = {}
