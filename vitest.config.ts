import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['{shared,protocols,daemon,web,tests}/**/*.test.ts'],
    setupFiles: ['./tests/tools/one-seed.ts'],
    reporters: ['default', './tests/tools/counts-reporter.ts'],
    testTimeout: 180_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
  },
});
