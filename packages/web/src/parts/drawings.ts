/** The drawings, in a piece of their own: asked for when the first one is to be seen. */
export { lyingBolt, sectionDrawing, sectionOf, threadOf, trayDrawing, trayOfAnswer } from '@gripbook/print'
