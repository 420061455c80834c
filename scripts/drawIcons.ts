/**
 * Draws the page's icons into packages/web/public/: a bolt in its seat with its grip measured beside it, scribed on marking-out blue.
 * Run after the drawing was changed: node --conditions=development --import tsx scripts/drawIcons.ts
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
<path d="M10.2 12h16.8v8.5H10.2z" fill="${SEAT}"/>
<path d="M9.5 15.5l4-4M9.5 19.5l7-7M11.5 21.5l5-5M20 16.5l5-5M20 20.5l8-8M23 21.5l5-5" stroke="${BLUE}" stroke-width="1"/>
<path d="M15.2 11.5H22v14.8l-1.7 1.9h-3.4l-1.7-1.9z" fill="${STEEL}"/>
<path d="M14.8 22.2l7.6-1.3M14.8 24.4l7.6-1.3M14.8 26.6l7.6-1.3" stroke="${BLUE}" stroke-width=".8"/>
<path d="M12.9 4.8h11.4l1.3 1.4V12H11.6V6.2z" fill="${STEEL}"/>
<path d="M12.9 4.8h2.3V12h-3.6V6.2zM22 4.8h2.3l1.3 1.4V12H22z" fill="${SHADE}"/>
<path d="M4.2 12h4.6M4.2 20.5h4.6M6.5 13v6.5" stroke="${SCRIBED}" stroke-width=".9"/>
<path d="M6.5 12.1l1.5 3.1H5zM6.5 20.4L5 17.3h3z" fill="${SCRIBED}"/>`

function icon(round: number, size: number): string {
  const lead = (32 - 32 * size) / 2
  const placed = size === 1 ? SIGN : `\n<g transform="translate(${lead} ${lead}) scale(${size})">${SIGN}\n</g>`
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32" fill="none">
<rect width="32" height="32" rx="${round}" fill="${BLUE}"/>${placed}
</svg>
`
}

const into = (name: string) => fileURLToPath(new URL(`../packages/web/public/${name}`, import.meta.url))
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
