/** The report as a browser shows it: from disk, with the network off, under its own content policy. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { noStartResult, settledResult } from '../unit/report/synthetic-result.ts';
import {
  axeViolations,
  drawnLines,
  launched,
  openReport,
  reportText,
  type Look,
  type OpenReport,
} from './report-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launched();
});
afterAll(() => browser.close());

async function visit(
  result: typeof settledResult,
  look: Partial<Look>,
  inspect: (page: Page, report: OpenReport) => Promise<void>,
): Promise<void> {
  const report = await openReport(browser, result, { width: 1280, colorScheme: 'light', ...look });
  try {
    await inspect(report.page, report);
  } finally {
    await report.close();
  }
}

const views = [settledResult, noStartResult].flatMap((result) =>
  (['light', 'dark'] as const).flatMap((colorScheme) =>
    [360, 1280].map((width) => ({ kind: result.outcome.kind, colorScheme, width, result })),
  ),
);

describe.each(views)('$kind, $colorScheme, $width px wide', ({ result, ...look }) => {
  test('draws every chart, asks for nothing, complains of nothing, fits, and axe finds nothing', async () => {
    await visit(result, look, async (page, { complaints, requests }) => {
      const lines = await drawnLines(page);
      expect(lines).toHaveLength(result.settled === undefined ? 3 : 9);
      expect(lines.filter(({ pixels }) => pixels < 40)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(look.width);
      expect(await axeViolations(page)).toEqual([]);
      expect(requests).toEqual([page.url()]);
      expect(complaints).toEqual([]);
    });
  });
});

test('the content policy is in force: a script put into the page does not run', async () => {
  await visit(settledResult, {}, async (page, { complaints }) => {
    await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'document.title = "ran"';
      document.body.append(script);
    });
    expect(await page.title()).toContain('Village cider press');
    await expect.poll(() => complaints.join(' ')).toContain('Content Security Policy');
  });
});

test('a hostile title is shown as text', async () => {
  const title = '</title><script>document.body.remove()</script><img src=x>';
  await visit({ ...settledResult, title }, {}, async (page, { complaints }) => {
    expect(await page.locator('h1').textContent()).toBe(title);
    expect(await page.locator('img').count()).toBe(0);
    expect(complaints).toEqual([]);
  });
});

test('the slider moves the cursor of all three charts of the turn from the keyboard', async () => {
  await visit(settledResult, {}, async (page) => {
    const slider = page.getByRole('slider', { name: 'Crank angle' });
    await slider.focus();
    await slider.press('End');
    await slider.press('ArrowLeft');
    const read = (id: string): Promise<string | null> => page.locator(`[data-value="${id}"]`).textContent();
    expect(await page.locator('[data-slider="turn"] output').textContent()).toBe('359');
    expect(Number(await read('pressures/0'))).toBeGreaterThan(3);
    expect(Number(await read('areas/0'))).toBeGreaterThan(3);
    expect(await read('torques/1')).not.toBe('');
  });
});

test('the pointer moves the slider and the other charts along', async () => {
  await visit(settledResult, {}, async (page) => {
    await page.locator('[data-chart="areas"] .u-over').hover();
    await expect.poll(() => page.locator('[data-slider="turn"] output').textContent()).toMatch(/^1[78]\d$/u);
    expect(await page.locator('[data-value="torques/0"]').textContent()).not.toBe('');
  });
});

const firstInk = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const canvas = document.querySelector('canvas');
    const pixels = canvas?.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
    return Array.from(pixels).join();
  });

test('charts are drawn again in other colours and to another width', async () => {
  await visit(settledResult, {}, async (page) => {
    const light = await firstInk(page);
    await page.emulateMedia({ colorScheme: 'dark' });
    await expect.poll(async () => (await firstInk(page)) === light).toBe(false);
    await page.setViewportSize({ width: 500, height: 900 });
    await expect
      .poll(() =>
        page
          .locator('canvas')
          .first()
          .evaluate((canvas) => canvas.clientWidth),
      )
      .toBeLessThan(500);
  });
});

test('on paper it is light, whatever the screen is, and no wider than the sheet', async () => {
  await visit(settledResult, { colorScheme: 'dark', width: 688 }, async (page) => {
    await page.emulateMedia({ media: 'print' });
    const paper = await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    expect(paper).toBe('rgb(255, 255, 255)');
    await expect
      .poll(() =>
        page.evaluate(() => Math.max(...[...document.querySelectorAll('canvas')].map((c) => c.clientWidth))),
      )
      .toBe(640);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(688);
  });
});

test('without scripts it says so and shows the rest', async () => {
  await visit(settledResult, { javaScriptEnabled: false }, async (page) => {
    expect(await page.locator('.noscript').isVisible()).toBe(true);
    expect(await page.locator('.drawing').first().isVisible()).toBe(true);
    expect(await page.getByRole('slider').count()).toBe(0);
  });
});

test('the file stays below 400 kB', () => {
  expect(Buffer.byteLength(reportText(settledResult))).toBeLessThan(400e3);
});
