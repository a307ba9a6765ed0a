/**
 * `TICKOVER_MUTATE=gas npm run mutation` (or parts, or run): breaks the code of one folder in small ways, one at a time, and
 * sees whether a quick test turns red. Not part of CI; what it found is in docs/mutation-testing.md.
 */
const area = process.env['TICKOVER_MUTATE'] ?? 'gas';

export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: '.config/vitest.mutation.config.ts', related: false },
  mutate: [`src/${area}/**/*.ts`],
  // Words are compared letter by letter elsewhere (tests/messages); the descriptions of parameters are all words.
  mutator: { excludedMutations: ['StringLiteral'] },
  coverageAnalysis: 'perTest',
  concurrency: 1,
  timeoutMS: 30_000,
  incremental: true,
  incrementalFile: `reports/mutation/${area}-incremental.json`,
  tempDirName: '.stryker-tmp',
  ignorePatterns: ['dist', 'coverage', 'docs', 'reports'],
  reporters: ['clear-text', 'json', 'progress-append-only'],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false },
  jsonReporter: { fileName: `reports/mutation/${area}.json` },
  thresholds: { high: 90, low: 80, break: 80 },
};
