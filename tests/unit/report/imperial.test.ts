/** Imperial units reach every sentence, table and axis for people, and nothing that programs read. */
import { describe, expect, it } from 'vitest';
import { reportHtml } from '../../../src/report/report-html.ts';
import { summaryJson } from '../../../src/report/summary/summary-json.ts';
import { inUnits } from '../../../src/quantity/unit-system.ts';
import { keyFigures } from '../../../src/verdict/key-figures.ts';
import { verdictOf } from '../../../src/verdict/verdict.ts';
import { sampleDrive } from './picture-samples.ts';
import * as results from './synthetic-result.ts';

const assets = { script: { text: '', sha256: '' }, style: { text: '', sha256: '' } };
const metric = /\d[\s\u00a0](?:bar|N·m|mm|cm³|kJ|J|kg|m\/s|°C(?!, 65 %))(?![\p{L}·])/u;

describe.each(Object.entries(results))('%s', (_name, result) => {
  it('has no metric unit left in what people read', () => {
    const said = JSON.stringify([verdictOf(result, 'imperial'), keyFigures(result, 'imperial')]);
    expect(metric.exec(said)?.[0]).toBeUndefined();
    const page = reportHtml({ ...result, drive: sampleDrive }, assets, 'imperial');
    expect(
      metric.exec(page.replaceAll('\u00a0', ' ').replaceAll('at 100 kPa and 20 °C', ''))?.[0],
    ).toBeUndefined();
    expect(page).toContain('Torque [lbf·ft]');
  });

  it('is the same for programs', () => {
    expect(inUnits('imperial', () => summaryJson(result))).toEqual(summaryJson(result));
  });
});
