/** A result as one HTML file that works from disk with the network off, on screen and on paper. */
import { inUnits, unitSystem, type UnitSystem } from '../quantity/unit-system.ts';
import type { RunResult } from '../run/result.ts';
import { verdictOf } from '../verdict/verdict.ts';
import { sheetBody } from './html/body.ts';
import { pageText, type ReportAssets } from './html/page.ts';
import { sections } from './sections/registry.ts';
import type { ReportExtras } from './sections/section.ts';

/**
 * `assets` are the script and the style sheet of the built package, `dist/report/client.js` and `client.css`; `units` those
 * in which people read the page; `extras` what it shows besides the run.
 */
export function reportHtml(
  result: RunResult,
  assets: ReportAssets,
  units: UnitSystem = unitSystem(),
  extras: ReportExtras = {},
): string {
  return inUnits(units, () => pageOf(result, assets, extras));
}

function pageOf(result: RunResult, assets: ReportAssets, extras: ReportExtras): string {
  const verdict = verdictOf(result);
  const shown = sections.flatMap(({ id, heading, content }) => {
    const found = content(result, verdict, extras);
    return found === undefined ? [] : [{ id, heading, ...found }];
  });
  const { title, notes } = result;
  return pageText(
    {
      title: `${title} – tickover report`,
      body: sheetBody({ kind: 'report of one run', title, notes, sections: shown, files: 'the CSV files' }),
      data: { charts: shown.flatMap(({ charts }) => charts ?? []) },
    },
    assets,
  );
}
