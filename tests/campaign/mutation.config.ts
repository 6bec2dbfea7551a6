import { defineConfig } from 'vitest/config'

/** The tests of one folder of the core, for `.scripts/mutate.mjs`: every mutant runs them again. */
const folder = process.env['MUTATED_FOLDER'] ?? 'cuts'

export default defineConfig({
  test: {
    environment: 'node',
    include: [`src/core/${folder}/**/*.test.ts`, `tests/check-values/${folder}.test.ts`],
    testTimeout: 180_000,
    maxWorkers: 1,
  },
})
