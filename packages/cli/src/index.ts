export { main } from './main.ts'
export { processWorld } from './processWorld.ts'
export { placementText } from './text/placementText.ts'
export type { World } from './world.ts'
