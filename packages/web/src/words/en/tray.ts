export const tray = {}
