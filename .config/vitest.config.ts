import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Tests that put something in the place of a module, or fill one up; they need modules of their own. */
const replacing = [
  ...['laws/random-engines', 'laws/another-gas', 'laws/kernel-seats', 'published/mean-effective-pressure'],
].map((name) => `tests/${name}.test.ts`);

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    globalSetup: 'tests/support/fresh-kernel.ts',
    // Two at a time also on two cores: much of the waiting is for commands and browsers.
    maxWorkers: 2,
    testTimeout: 40_000,
    hookTimeout: 60_000,
    expect: { requireAssertions: true },
    coverage: {
      provider: 'v8',
      include: ['src/**/*.ts'],
      reportsDirectory: 'coverage',
    },
    projects: [
      // To load all modules anew for every file would cost as much as half the tests themselves.
      {
        extends: true,
        test: { name: 'together', include: ['tests/**/*.test.ts'], exclude: replacing, isolate: false },
      },
      { extends: true, test: { name: 'alone', include: replacing } },
    ],
  },
});
