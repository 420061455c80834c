/** The drawings, in a piece of their own: asked for when the first one is to be seen. */
export { sectionDrawing, sectionOf, trayDrawing, trayOfAnswer } from '@gripbook/print'
