/** The page of a bench test in a browser: from disk, with the network off, under its own content policy. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Finding } from '../../src/measure/finding.ts';
import { findingOf } from '../unit/measure/sheets.ts';
import { axeViolations, benchText, drawnLines, launched, openPage } from './report-page.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launched();
});
afterAll(() => browser.close());

const decay = findingOf('chest-decay.yaml');
const words: Finding = {
  ...decay,
  usable: false,
  tables: [
    {
      caption: 'Causes',
      head: ['Cause', 'Number', 'Test'],
      rows: [['1. <b>A leak</b>', '3 L/min', 'Soapy water.']],
    },
  ],
  warnings: ['A doubt.'],
  estimates: [{ ...decay.estimates[0]!, high: Infinity }],
};

const titled = (finding: Finding) => ({
  title: 'Chest <i>',
  notes: 'Notes',
  test: 'bench test, pressure decay',
  finding,
});

describe.each([
  { name: 'decay', finding: decay, colorScheme: 'light' as const, width: 1280 },
  { name: 'decay', finding: decay, colorScheme: 'dark' as const, width: 360 },
  { name: 'tables and doubts', finding: words, colorScheme: 'light' as const, width: 360 },
])('$name, $colorScheme, $width px wide', ({ finding, ...look }) => {
  test('draws lines and points, asks for nothing, complains of nothing, fits, and axe finds nothing', async () => {
    const { page, complaints, requests, close } = await openPage(browser, benchText(titled(finding)), look);
    const lines = await drawnLines(page);
    expect(lines.map(({ name }) => name.trim())).toEqual(['read', 'gap', 'hole', 'gap', 'hole']);
    expect(lines.filter(({ pixels }) => pixels < 40)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(look.width);
    expect(await page.locator('h1').textContent()).toBe('Chest <i>');
    expect(await page.locator('b').count()).toBe(0);
    expect(await axeViolations(page)).toEqual([]);
    expect(requests).toEqual([page.url()]);
    expect(complaints).toEqual([]);
    await close();
  });
});
