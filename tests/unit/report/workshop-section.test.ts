/** The parts to make, at a glance, in the report. */
import { expect, it } from 'vitest';
import { reportHtml, workshopPreview } from '../../../src/index.ts';
import { shippedSpec, withGear } from '../../support/drawn.ts';
import { settledResult } from './synthetic-result.ts';

const asset = { text: '', sha256: '' };
const page = (workshop?: ReturnType<typeof workshopPreview>): string =>
  reportHtml(
    settledResult,
    { script: asset, style: asset },
    undefined,
    workshop === undefined ? {} : { workshop },
  );

const press = shippedSpec('cider-press.yaml');

it('shows a picture of every part, without looks of its own, in few bytes', () => {
  const text = page(workshopPreview(press));
  expect(text.match(/<svg class="drawn-part"/gu)).toHaveLength(9);
  expect(text).toContain('Cam of the admission spool');
  expect(text.length - page().length).toBeLessThan(30_000);
  const section = text.slice(text.indexOf('id="workshop"'));
  expect(section).not.toMatch(/style=|stroke="#/u);
});

it('says why there is none', () => {
  const text = page(workshopPreview(withGear(press, { cams: { base_circle: 20e-3 } })));
  expect(text).toContain('The valve gear cannot be drawn as it stands');
  expect(text).toContain('valve_gear.cams.base_circle: expected at least');
});

it('is left out where there is nothing to draw', () => {
  expect(page()).not.toContain('id="workshop"');
  expect(page(workshopPreview(shippedSpec('gate-opener-electric.yaml')))).not.toContain('id="workshop"');
});
