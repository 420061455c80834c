export const settings = {
  pairTitle: 'Pair this device',
  paired: (name: string) => `Paired as ${name}. What was on this device is on its way to the shop.`,
}
