/** Sheets as a printer gets them: 1 : 1 in both papers, nothing wider than the paper, nothing asked of the network. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { outlineBounds } from '../../src/workshop/geometry/outline.ts';
import { drawn, fileOf, shippedSpec } from '../support/drawn.ts';
import { shapesOn } from '../support/read-dxf.ts';
import { launched } from './report-page.ts';

const MM_PER_PIXEL = 25.4 / 96;
const press = drawn(shippedSpec('cider-press.yaml'));

let browser: Browser;
let folder: string;
beforeAll(async () => {
  browser = await launched();
  folder = mkdtempSync(join(tmpdir(), 'tickover-sheets-'));
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true });
});

async function printed(name: string, inspect: (page: Page) => Promise<void>): Promise<void> {
  const file = join(folder, name);
  writeFileSync(file, fileOf(press, name));
  // A4 and Letter leave 190 mm and 196 mm between margins of 10 mm.
  const context = await browser.newContext({ viewport: { width: 718, height: 1000 }, offline: true });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  const requests: string[] = [];
  context.on('request', (request) => requests.push(request.url()));
  await page.emulateMedia({ media: 'print' });
  await page.goto(pathToFileURL(file).href);
  await inspect(page);
  expect(complaints).toEqual([]);
  expect(requests).toHaveLength(1);
  await context.close();
}

/** Size on paper [mm] of a shape, without the width of its line. */
const sizeOf = (page: Page, selector: string): Promise<readonly number[]> =>
  page
    .locator(selector)
    .first()
    .evaluate((shape) => {
      const { width, height } = (shape as SVGGraphicsElement).getBBox();
      const { a, d } = (shape as SVGGraphicsElement).getScreenCTM() ?? new DOMMatrix([NaN]);
      return [width * a, height * d];
    })
    .then((sizes) => sizes.map((own) => own * MM_PER_PIXEL));

const overhang = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

test('the sheets of the parts', async () => {
  await printed('sheets.html', async (page) => {
    const [check] = await sizeOf(page, '#admission-cam .scale path');
    expect(check).toBeCloseTo(100, 1);
    const [edge] = shapesOn(fileOf(press, 'admission-cam.dxf'), 'CUT-OUTSIDE');
    const { left, right, bottom, top } = outlineBounds(edge ?? []);
    const [width, height] = await sizeOf(page, '#admission-cam .picture path[d*="A"]');
    expect(width).toBeCloseTo((right - left) * 1e3, 1);
    expect(height).toBeCloseTo((top - bottom) * 1e3, 1);
    expect(await overhang(page)).toBe(0);
    expect(await page.locator('section').count()).toBe(9);
  });
});

test('the setting sheet and its degree wheel', async () => {
  await printed('setting.html', async (page) => {
    const [width] = await sizeOf(page, '#degree-wheel .picture circle[r="90"]');
    expect(width).toBeCloseTo(180, 1);
    expect(await overhang(page)).toBe(0);
    await page.getByText('Compressed air starts an engine without warning.').waitFor();
  });
});
