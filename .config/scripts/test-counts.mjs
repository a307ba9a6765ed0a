/**
 * Reads vitest's JSON result (path given) and prints `N passed, N failed`; fails unless tests ran and all passed.
 * A test file that broke before its first test counts as one failure.
 */
import { existsSync, readFileSync } from 'node:fs';

/** @typedef {{ status: string, assertionResults: { status: string }[] }} TestFile */

const [path] = process.argv.slice(2);
/** @type {{ testResults: TestFile[] }} */
const { testResults } =
  path !== undefined && existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : { testResults: [] };

const outcomes = testResults.flatMap(({ status, assertionResults }) =>
  assertionResults.length === 0 ? [status] : assertionResults.map((test) => test.status),
);
const passed = outcomes.filter((status) => status === 'passed').length;
const failed = outcomes.filter((status) => status === 'failed').length;

console.log(`${passed} passed, ${failed} failed`);
process.exitCode = passed > 0 && failed === 0 ? 0 : 1;
