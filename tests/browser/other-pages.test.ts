/** Pages beside the report of one run, and pictures of several runs, as a browser shows them. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { comparisonHtml } from '../../src/report/comparison/comparison-html.ts';
import { sheetBody } from '../../src/report/html/body.ts';
import { pageText } from '../../src/report/html/page.ts';
import { receiverContent } from '../../src/report/pictures/receiver.ts';
import { startMapFigure } from '../../src/report/pictures/start-map.ts';
import { torqueSpeedContent } from '../../src/report/pictures/torque-speed.ts';
import { receiverCourse, sampleDrive, sampleStarts } from '../unit/report/picture-samples.ts';
import { doubleActingResult, noStartResult, settledResult } from '../unit/report/synthetic-result.ts';
import { assets, axeViolations, drawnLines, launched, openPage } from './report-page.ts';

const hostile = '</title><script>document.body.remove()</script>';

const comparison = comparisonHtml(
  {
    runs: [
      { name: hostile, result: { ...settledResult, title: hostile } },
      { name: 'double-acting', result: doubleActingResult },
      { name: 'first-attempt', result: noStartResult },
    ],
    differences: [
      { key: 'cylinder.action', values: ['single', 'double', 'single'] },
      { key: hostile, values: [hostile, undefined, undefined] },
    ],
  },
  assets,
);

const torque = torqueSpeedContent(sampleDrive);
const receiver = receiverContent(receiverCourse);
const pictures = pageText(
  {
    title: 'Pictures',
    body: sheetBody({
      kind: 'pictures',
      title: 'Pictures',
      files: 'no files',
      sections: [
        { id: 'starts', heading: 'Starts', body: startMapFigure(sampleStarts) },
        { id: 'torque', heading: 'Torque', ...torque },
        { id: 'receiver', heading: 'Receiver', ...receiver },
      ],
    }),
    data: { charts: [...(torque.charts ?? []), ...(receiver.charts ?? [])] },
  },
  assets,
);

let browser: Browser;
beforeAll(async () => {
  browser = await launched();
});
afterAll(() => browser.close());

const pages = { comparison: { text: comparison, lines: 7 }, pictures: { text: pictures, lines: 6 } };
const views = Object.entries(pages).flatMap(([name, page]) => [
  { name, ...page, colorScheme: 'dark' as const, width: 390 },
  { name, ...page, colorScheme: 'light' as const, width: 1200 },
]);

describe.each(views)('$name, $colorScheme, $width px wide', ({ text, lines, ...look }) => {
  test('draws, asks for nothing, complains of nothing, fits, and axe finds nothing', async () => {
    const { page, complaints, requests, close } = await openPage(browser, text, look);
    try {
      const drawn = await drawnLines(page);
      expect(drawn).toHaveLength(lines);
      // The engine that does not start has a short line only.
      expect(drawn.filter(({ pixels }) => pixels < 15)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(look.width);
      expect(await axeViolations(page)).toEqual([]);
      expect(requests).toEqual([page.url()]);
      expect(complaints).toEqual([]);
    } finally {
      await close();
    }
  });
});

test('a comparison of three runs stays below 400 kB', () => {
  expect(Buffer.byteLength(comparison)).toBeLessThan(400e3);
});
