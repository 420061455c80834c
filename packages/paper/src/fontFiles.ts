/**
 * Where the font lies that comes with this package: Liberation Sans, under the SIL Open Font License 1.1 (fonts/LICENSE). It holds Latin, Greek,
 * Cyrillic and Hebrew. On a server these are file addresses, on a built page addresses beside it; whoever makes paper reads them.
 */
export const FONT_FILES: { regular: URL; bold: URL } = {
  regular: new URL('../fonts/LiberationSans-Regular.ttf', import.meta.url),
  bold: new URL('../fonts/LiberationSans-Bold.ttf', import.meta.url),
}
