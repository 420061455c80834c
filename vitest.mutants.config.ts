/**
 * For mutants only: the quick tests of the engine. Laws, and the slow ways they are held against, run hundreds of faces and would be run again
 * for every mutant, so they stay out: what kills a mutant is a test of the sum itself or of a published figure.
 */
import { configDefaults, defineConfig, mergeConfig } from 'vitest/config'
import base from './vitest.config.ts'

export default mergeConfig(
  base,
  defineConfig({
    test: {
      include: ['packages/engine/src/**/*.test.ts'],
      exclude: [...configDefaults.exclude, '**/*.law.test.ts', '**/testing/**'],
      testTimeout: 20_000,
    },
  }),
)
