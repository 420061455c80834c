import { defineConfig } from 'vitest/config'

export default defineConfig({
  resolve: { conditions: ['development'] },
  ssr: { resolve: { conditions: ['development'] } },
  test: {
    include: ['packages/*/src/**/*.test.ts', 'scripts/**/*.test.ts', 'trials/**/*.test.ts'],
    testTimeout: 600_000,
    hookTimeout: 60_000,
  },
})
