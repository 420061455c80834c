import { defineConfig } from 'vitest/config'

export default defineConfig({
  resolve: { conditions: ['development'] },
  ssr: { resolve: { conditions: ['development'] } },
  test: {
    include: ['packages/*/src/**/*.test.ts', 'scripts/**/*.test.ts', 'trials/**/*.test.ts'],
    testTimeout: 600_000,
    // Two cores run several browsers at once: what comes is waited for, what does not come fails all the same.
    expect: { poll: { timeout: 60_000 } },
    hookTimeout: 180_000,
  },
})
