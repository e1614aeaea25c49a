import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/support/build.ts'],
    testTimeout: 30_000,
    hookTimeout: 30_000,
    maxWorkers: 2,
    // The report is what the check-in run counts its tests from.
    reporters: ['default', ['json', { outputFile: 'dist/test-report.json' }]],
  },
});
