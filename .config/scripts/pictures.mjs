/** Takes the pictures of the README anew from reports of the built command; people look at them before they are kept. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { projectRoot } from './steps.mjs';

/** Parts of a report, by what they are taken from. */
const pictures = [
  { name: 'report', scenario: 'cider-press', parts: 'header, #answer, #indicator, #receiver' },
  { name: 'starts', scenario: 'cask-hoist-slide-valve', parts: '#starts' },
];

/** Beside the pictures themselves, what is too long for them. */
const leftOut = 'footer, .notes, .note, .statements, details, .slider, #receiver figure + figure';

const folder = mkdtempSync(join(tmpdir(), 'tickover-pictures-'));
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
try {
  for (const { name, scenario, parts } of pictures) {
    const out = join(folder, scenario);
    const file = join(projectRoot, 'scenarios', `${scenario}.yaml`);
    execFileSync(process.execPath, [
      join(projectRoot, 'dist/cli/main.js'),
      'run',
      file,
      '--quiet',
      '--out',
      out,
    ]);
    for (const colorScheme of /** @type {const} */ (['light', 'dark'])) {
      const page = await browser.newPage({ colorScheme, viewport: { width: 1000, height: 200 } });
      await page.goto(pathToFileURL(join(out, 'report.html')).href);
      await page.locator(`header:not(${parts}), section:not(${parts}), ${leftOut}`).evaluateAll((all) => {
        for (const own of all) own.remove();
      });
      await page.screenshot({
        path: join(projectRoot, 'docs/pictures', `${name}-${colorScheme}.png`),
        fullPage: true,
      });
      await page.close();
    }
  }
} finally {
  await browser.close();
  rmSync(folder, { recursive: true });
}
