/** What tests look for in an open page: lines that were drawn, and what hinders people. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export interface DrawnLine {
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
