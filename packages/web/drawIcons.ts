/**
 * Draws the page's icons into public/: a bolt in its seat with its grip measured beside it, scribed on marking-out blue.
 * Run after the drawing was changed: node --conditions=development --import tsx packages/web/drawIcons.ts
 */
import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import sharp from 'sharp'

const BLUE = '#1f3f9e'
const STEEL = '#ffffff'
const SHADE = '#c9d4f5'
const SEAT = '#4a68c4'
const SCRIBED = '#ffd98a'

/** On a grid of 32, within the middle 26. */
const SIGN = `
<path d="M10 12h15.5v8.5H10z" fill="${SEAT}"/>
<path d="M10 17l3-3M10 20.5l3.4-3.4M20.5 14.4l2.4-2.4M20.5 19l5-5M22.5 20.5l3-3" stroke="${BLUE}" stroke-width=".8"/>
<path d="M14.5 12h6.5v14.4l-1.6 1.8h-3.3l-1.6-1.8z" fill="${STEEL}"/>
<path d="M14.5 21.4l6.5-1M14.5 23.4l6.5-1M14.5 25.4l6.5-1" stroke="${BLUE}" stroke-width=".9"/>
<path d="M11.6 5.4h12.3l1 1.2V12H10.6V6.6z" fill="${STEEL}"/>
<path d="M10.6 6.6l1-1.2h2.8V12h-3.8zM21.1 5.4h2.8l1 1.2V12h-3.8z" fill="${SHADE}"/>
<path d="M4 12h5M4 20.5h5M6.2 12.8v6.9" stroke="${SCRIBED}" stroke-width="1.1" stroke-linecap="round"/>
<path d="M6.2 12l1.1 2.4H5.1zM6.2 20.5l-1.1-2.4h2.2z" fill="${SCRIBED}"/>`

function icon(round: number, size: number): string {
  const lead = (32 - 32 * size) / 2
  const placed = size === 1 ? SIGN : `\n<g transform="translate(${lead} ${lead}) scale(${size})">${SIGN}\n</g>`
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32" fill="none">
<rect width="32" height="32" rx="${round}" fill="${BLUE}"/>${placed}
</svg>
`
}

const into = (name: string) => fileURLToPath(new URL(`public/${name}`, import.meta.url))
const drawn = (svg: string, pixels: number) =>
  sharp(Buffer.from(svg), { density: (72 * pixels) / 32 })
    .resize(pixels, pixels)
    .png({ compressionLevel: 9 })

const usual = icon(7, 1)
writeFileSync(into('icon.svg'), usual)
await drawn(usual, 192).toFile(into('icon-192.png'))
await drawn(usual, 512).toFile(into('icon-512.png'))
// A device cuts its own shape out of this one: the sign stays within the middle 80 %, the ground goes to the edge.
await drawn(icon(0, 0.82), 512).toFile(into('icon-maskable-512.png'))
