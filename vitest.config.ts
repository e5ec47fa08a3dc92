import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    reporters: ['default', './tests/support/count-line.ts'],
    sequence: { shuffle: { files: true, tests: true } },
    // Guards against a hang only: a busy machine may take its time.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    expect: { poll: { timeout: 60_000 } },
    // Half of the tests wait for a browser or a database: no processor need stand idle meanwhile.
    maxWorkers: '100%',
    globalSetup: ['tests/support/global-setup.ts'],
  },
});
