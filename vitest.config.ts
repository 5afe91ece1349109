import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    globalSetup: ['tests/setup/shared-postgres.ts'],
    pool: 'forks',
    maxWorkers: 2,
    testTimeout: 30_000,
    hookTimeout: 60_000,
    // A test that asserts nothing, or a file without tests, is a mistake.
    passWithNoTests: false,
    expect: { requireAssertions: true },
  },
})
