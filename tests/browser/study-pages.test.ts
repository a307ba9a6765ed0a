/**
 * The pages of studies, of a search for causes and of a run with a receiver, as the command writes them, in a browser: from
 * disk, with the network off. Every page is opened once and looked at wide and narrow, light and dark, and on paper.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeViolations, drawnLines, launched, openPage, type OpenReport } from './report-page.ts';
import { hostileTitle, pageNames, writtenPages, type PageName } from './written-pages.ts';

const [WIDE, MIDDLE, NARROW] = [1400, 920, 380] as const;

/** What the margins of `print.css` leave of an A4 sheet, at 96 px to the inch. */
const [SHEET_WIDTH, SHEET_HEIGHT] = [Math.floor((182 / 25.4) * 96), Math.floor((265 / 25.4) * 96)] as const;

/** Lines over an axis, and drawings. */
const pictures: Readonly<Record<PageName, { readonly lines: number; readonly drawings: number }>> = {
  line: { lines: 4, drawings: 0 },
  field: { lines: 0, drawings: 2 },
  best: { lines: 4, drawings: 0 },
  limit: { lines: 2, drawings: 0 },
  odds: { lines: 2, drawings: 1 },
  next: { lines: 0, drawings: 0 },
  why: { lines: 2, drawings: 0 },
  supply: { lines: 15, drawings: 3 },
};

let browser: Browser;
let pages: Readonly<Record<PageName, string>>;
beforeAll(async () => {
  [browser, pages] = await Promise.all([launched(), writtenPages()]);
}, 120_000);
afterAll(() => browser.close());

const scrollWidth = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth);

/** Controls that the Tab key passes by. */
async function unreached(page: Page): Promise<string[]> {
  const controls = 'summary, input, [tabindex="0"]';
  const count = await page.evaluate((selector) => {
    const all = [...document.querySelectorAll<HTMLElement>(selector)].filter((own) => own.checkVisibility());
    all.forEach((own, i) => (own.dataset['control'] = String(i)));
    document.body.focus();
    return all.length;
  }, controls);
  const reached = new Set<string | undefined>();
  for (let i = 0; i < count; i += 1) {
    await page.keyboard.press('Tab');
    reached.add(
      await page.evaluate(() => (document.activeElement as HTMLElement | null)?.dataset['control']),
    );
  }
  return page.evaluate(
    ([seen]) =>
      [...document.querySelectorAll<HTMLElement>('[data-control]')]
        .filter(({ dataset }) => !seen.includes(dataset['control']))
        .map(({ outerHTML }) => outerHTML.slice(0, 120)),
    [[...reached]] as const,
  );
}

describe.each(pageNames)('%s', (name) => {
  let report: OpenReport;
  let page: Page;
  beforeAll(async () => {
    report = await openPage(browser, pages[name], { width: WIDE, colorScheme: 'light' });
    page = report.page;
  });
  afterAll(() => report.close());

  test('draws its pictures', async () => {
    const { lines, drawings } = pictures[name];
    const drawn = await drawnLines(page);
    expect(drawn).toHaveLength(lines);
    // A value without neighbours is a dot.
    expect(drawn.filter(({ pixels }) => pixels < 5)).toEqual([]);
    const boxes = await page
      .locator('svg.drawing')
      .evaluateAll((all) =>
        all.map((own) => own.getBoundingClientRect()).map(({ width, height }) => Math.min(width, height)),
      );
    expect(boxes).toHaveLength(drawings);
    for (const size of boxes) expect(size).toBeGreaterThan(50);
  });

  test('shows a hostile title and notes as text', async () => {
    expect(await page.locator('h1').textContent()).toBe(hostileTitle);
    expect(await page.title()).toContain('</title><script>');
    expect(await page.locator('img, b, main script, header script').count()).toBe(0);
    expect(await page.locator('script').count()).toBe(2);
  });

  test('lets the keyboard reach every control', async () => {
    expect(await unreached(page)).toEqual([]);
  });

  test('fits and pleases axe, wide and light', async () => {
    expect(await scrollWidth(page)).toBe(WIDE);
    expect(await axeViolations(page)).toEqual([]);
  });

  test('fits a tablet', async () => {
    await page.setViewportSize({ width: MIDDLE, height: 900 });
    await expect.poll(() => scrollWidth(page)).toBe(MIDDLE);
  });

  test('fits and pleases axe, narrow and dark', async () => {
    await page.emulateMedia({ colorScheme: 'dark' });
    await page.setViewportSize({ width: NARROW, height: 900 });
    await expect.poll(() => scrollWidth(page)).toBe(NARROW);
    expect(await axeViolations(page)).toEqual([]);
  });

  test('is whole on paper', async () => {
    await page.setViewportSize({ width: SHEET_WIDTH, height: SHEET_HEIGHT });
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => scrollWidth(page)).toBe(SHEET_WIDTH);
    const cut = await page.evaluate(
      ([width, height]) =>
        [...document.querySelectorAll('figure, svg, canvas, table')]
          .map((own) => ({ own, box: own.getBoundingClientRect() }))
          .filter(({ own, box }) => {
            const tall = own.tagName !== 'TABLE' && box.height > height;
            return box.right > width + 1 || tall;
          })
          .map(({ own }) => own.outerHTML.slice(0, 120)),
      [SHEET_WIDTH, SHEET_HEIGHT] as const,
    );
    expect(cut).toEqual([]);
    const broken = await page
      .locator('figure')
      .evaluateAll((all) => all.filter((own) => getComputedStyle(own).breakInside !== 'avoid').length);
    expect(broken).toBe(0);
  });

  test('asks for nothing and complains of nothing', () => {
    expect(report.requests).toEqual([page.url()]);
    expect(report.complaints).toEqual([]);
  });
});
