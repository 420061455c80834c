import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { brotliCompressSync, constants, gzipSync } from 'node:zlib'
import { defineConfig, type Plugin } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'

const SHRINKS = /\.(js|css|html|svg|json|wasm|webmanifest)$/

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8')) as { version: string }

/** Beside each file that shrinks its compressed forms: compressed once here, not for every device that comes. */
function compressed(): Plugin {
  let folder = ''
  return {
    name: 'gripbook-compressed',
    apply: 'build',
    enforce: 'post',
    configResolved({ root, build }) {
      folder = resolve(root, build.outDir)
    },
    closeBundle: {
      order: 'post',
      sequential: true,
      handler() {
        for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
          if (!SHRINKS.test(name)) continue
          const bytes = readFileSync(join(folder, name))
          writeFileSync(join(folder, `${name}.gz`), gzipSync(bytes, { level: 9 }))
          const params = { [constants.BROTLI_PARAM_QUALITY]: 11 }
          writeFileSync(join(folder, `${name}.br`), brotliCompressSync(bytes, { params }))
        }
      },
    },
  }
}

const DEMO = ['yard-loader.json', 'practice.json']

/** The practice unit is the demo of the repository: one file, beside the page as it is. */
function practiceUnit(): Plugin {
  return {
    name: 'gripbook-practice-unit',
    apply: 'build',
    generateBundle() {
      for (const name of DEMO) {
        const source = readFileSync(fileURLToPath(new URL(`../../demo/${name}`, import.meta.url)))
        this.emitFile({ type: 'asset', fileName: `demo/${name}`, source })
      }
    },
  }
}

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  define: { __GRIPBOOK_VERSION__: JSON.stringify(version) },
  // What is built comes from the packages' sources, so that a change shows without building them first.
  resolve: { conditions: ['development', 'browser', 'module', 'import'] },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    target: 'es2022',
    sourcemap: false,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // What makes PDFs comes when something is printed.
    chunkSizeWarningLimit: 600,
  },
  worker: { format: 'es' },
  server: { port: 7481, proxy: { '/api': 'http://localhost:7480' } },
  plugins: [
    VitePWA({
      // A page that is worked on is never changed under the hands: it is asked first.
      registerType: 'prompt',
      injectRegister: false,
      manifest: {
        name: 'Gripbook',
        short_name: 'Gripbook',
        description: 'The bench book of a gearbox rebuilder',
        lang: 'en',
        start_url: '/',
        display: 'standalone',
        background_color: '#fdfcf9',
        theme_color: '#fdfcf9',
        icons: [
          { src: '/icon-192.png', sizes: '192x192', type: 'image/png' },
          { src: '/icon-512.png', sizes: '512x512', type: 'image/png' },
          { src: '/icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
          { src: '/icon.svg', sizes: 'any', type: 'image/svg+xml' },
        ],
      },
      workbox: {
        // Everything, the solver and the practice unit too: a bench without signal cannot fetch it later.
        globPatterns: ['**/*.{js,css,html,svg,png,webp,json,wasm,ttf}'],
        maximumFileSizeToCacheInBytes: 8_000_000,
        navigateFallback: '/index.html',
        navigateFallbackDenylist: [/^\/api\//, /^\/trust/, /^\/authority/],
        inlineWorkboxRuntime: true,
        // The very first page too is the worker's: what it fetches later is there without signal.
        clientsClaim: true,
        sourcemap: false,
        cleanupOutdatedCaches: true,
      },
    }),
    practiceUnit(),
    compressed(),
  ],
})
