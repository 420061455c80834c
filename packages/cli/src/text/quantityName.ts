/** The names of what is read at the bench, in words. */
const NAMES: Record<string, string> = {
  bracket: 'bracket thickness',
  gasket: 'gasket thickness',
  mouth: 'mouth depth',
  threadDepth: 'thread depth',
  bottomDepth: 'bottom depth',
  behind: 'room behind',
  minimumEngagement: 'least engagement',
  threadLength: 'thread length',
  tip: 'tip length',
  washer: 'washer thickness',
}

export function quantityName(quantity: string): string {
  return NAMES[quantity] ?? quantity
}
