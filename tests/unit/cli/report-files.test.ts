/** The folder of a report, whatever its scenario is called: never outside reports/, never a device of Windows. */
import { expect, it } from 'vitest';
import { defaultFolder } from '../../../src/cli/report-files.ts';

it.each([
  ['press.yaml', 'reports/press'],
  ['some/where/press.yaml', 'reports/press'],
  ['../../press.yaml', 'reports/press'],
  ['💥.yaml', 'reports/💥'],
  ['...yaml', 'reports/scenario'],
  ['..yaml', 'reports/scenario'],
  ['....yaml', 'reports/scenario'],
  ['/', 'reports/scenario'],
  ['press. . .yaml', 'reports/press'],
  ['CON.yaml', 'reports/scenario CON'],
  ['nul', 'reports/scenario nul'],
  ['lpt1.x.yaml', 'reports/scenario lpt1.x'],
  ['console.yaml', 'reports/console'],
])('%s', (file, folder) => {
  expect(defaultFolder(file)).toBe(folder);
});
