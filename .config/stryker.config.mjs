/**
 * `TICKOVER_MUTATE=gas npm run mutation` (or parts, kernel, supply, run): breaks the code of one area in small ways, one at a time,
 * and sees whether a quick test turns red. With `TICKOVER_MUTATE_SHARE=0.15` only that share of the lines, drawn by lot, is
 * broken, and with `0.15-0.3` as many others; a mutant that spans several lines is then left out. With
 * `TICKOVER_MUTATE_FILES=src/gas/gap.ts:12-40`, which may name several by commas, only those places; with
 * `TICKOVER_MUTATE_ROUND=2` the next tests are asked. Not part of CI; what it found is in docs/mutation-testing.md.
 */
import { drawnLines } from './scripts/drawn-lines.mjs';
import { mutatedFiles } from './scripts/mutated-files.mjs';

const area = process.env['TICKOVER_MUTATE'] ?? 'gas';
const share = process.env['TICKOVER_MUTATE_SHARE'];
const files = process.env['TICKOVER_MUTATE_FILES'];

const all = mutatedFiles(area);

/** @param {string} range */
function drawn(range) {
  const [first = 0, second] = range.split('-').map(Number);
  return second === undefined ? drawnLines(all, 0, first) : drawnLines(all, first, second);
}

export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: '.config/vitest.mutation.config.ts', related: true },
  mutate: files?.split(',') ?? (share === undefined ? all : drawn(share)),
  // Words are compared letter by letter elsewhere (tests/messages); the descriptions of parameters are all words.
  mutator: { excludedMutations: ['StringLiteral'] },
  coverageAnalysis: 'perTest',
  concurrency: 1,
  // An endless loop is stopped by the count of its rounds; this is for what blocks altogether.
  timeoutMS: 6_000,
  incremental: false,
  tempDirName: '.stryker-tmp',
  ignorePatterns: ['dist', 'coverage', 'docs/*', '!docs/reference', 'reports'],
  // Most mutants are alive while modules load; see the test configuration for what keeps them cheap.
  warnings: { slow: false },
  reporters: ['clear-text', 'json', 'progress-append-only'],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false },
  jsonReporter: { fileName: `reports/mutation/${area}.json` },
  thresholds: { high: 90, low: 80, break: 80 },
};
