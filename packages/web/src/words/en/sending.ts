export const sending = {}
