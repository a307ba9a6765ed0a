/** Reports written to disk as the command line writes them, and a browser that looks at them with the network off. */
import { createHash } from 'node:crypto';
import { createRequire } from 'node:module';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { AxeResults } from 'axe-core';
import { expect } from 'vitest';
import { chromium, type Browser, type Page } from 'playwright-core';
import { benchHtml, type TitledFinding } from '../../src/report/bench/bench-html.ts';
import { reportHtml } from '../../src/report/report-html.ts';
import type { InlineAsset } from '../../src/report/html/page.ts';
import type { RunResult } from '../../src/run/result.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Built by `npm run build`, which `npm test` runs first. */
function asset(name: string): InlineAsset {
  const text = readFileSync(fileURLToPath(new URL(`../../dist/report/${name}`, import.meta.url)), 'utf8');
  return { text, sha256: createHash('sha256').update(text).digest('base64') };
}

/** Read once: someone may build again while the tests run. */
export const assets = { script: asset('client.js'), style: asset('client.css') };

export const reportText = (result: RunResult): string => reportHtml(result, assets);

export const launched = (): Promise<Browser> =>
  chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });

export interface Look {
  readonly width: number;
  readonly colorScheme: 'light' | 'dark';
  readonly javaScriptEnabled?: boolean;
}

export interface OpenReport {
  readonly page: Page;
  /** Console errors, uncaught errors and violations of the content policy. */
  readonly complaints: readonly string[];
  /** Every address asked for, the file itself included. */
  readonly requests: readonly string[];
  readonly close: () => Promise<void>;
}

export const openReport = (browser: Browser, result: RunResult, look: Look): Promise<OpenReport> =>
  openPage(browser, reportText(result), look);

export const benchText = (found: TitledFinding): string => benchHtml(found, assets);

export async function openPage(browser: Browser, text: string, look: Look): Promise<OpenReport> {
  const folder = mkdtempSync(join(tmpdir(), 'tickover-report-'));
  const file = join(folder, 'report.html');
  writeFileSync(file, text);
  const { width, ...settings } = look;
  const context = await browser.newContext({ ...settings, viewport: { width, height: 900 }, offline: true });
  const page = await context.newPage();
  const complaints: string[] = [];
  const requests: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  context.on('request', (request) => requests.push(request.url()));
  await page.goto(pathToFileURL(file).href);
  const close = async (): Promise<void> => {
    await context.close();
    rmSync(folder, { recursive: true });
  };
  return { page, complaints, requests, close };
}

interface DrawnLine {
  readonly name: string;
  /** Pixels in exactly the colour that the key shows. */
  readonly pixels: number;
}

export const drawnLines = (page: Page): Promise<DrawnLine[]> =>
  page.evaluate(() => {
    const pixelsOf = (canvas: HTMLCanvasElement | null): Uint8ClampedArray =>
      canvas?.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ??
      new Uint8ClampedArray();
    const count = (pixels: Uint8ClampedArray, [r, g, b]: number[]): number => {
      let found = 0;
      for (let i = 0; i < pixels.length; i += 4)
        if (pixels[i] === r && pixels[i + 1] === g && pixels[i + 2] === b && pixels[i + 3] === 255)
          found += 1;
      return found;
    };
    return [...document.querySelectorAll('figure.chart')].flatMap((figure) => {
      const pixels = pixelsOf(figure.querySelector('canvas'));
      return [...figure.querySelectorAll('.key li')].map((entry) => {
        const swatch = entry.querySelector('path');
        const stroke = swatch === null ? '' : getComputedStyle(swatch).stroke;
        return { name: entry.textContent, pixels: count(pixels, (stroke.match(/\d+/gu) ?? []).map(Number)) };
      });
    });
  });

export async function axeViolations(page: Page): Promise<string[]> {
  // Evaluated by the debugger, which the content policy of the page does not bind.
  await page.evaluate(axeSource);
  const { violations, passes } = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run: () => Promise<AxeResults> } }).axe.run(),
  );
  expect(passes.map(({ id }) => id)).toContain('color-contrast');
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}
