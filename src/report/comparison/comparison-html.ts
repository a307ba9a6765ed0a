/** Several runs as one page: what differs, the figures, and the pictures of all of them on the same axes. */
import { inUnits, unitSystem, type UnitSystem } from '../../quantity/unit-system.ts';
import { reportFileNames } from '../file-names.ts';
import { sheetBody, type ShownSection } from '../html/body.ts';
import { pageText, type ReportAssets } from '../html/page.ts';
import { airSharesSection, workSharesSection } from './compared-shares.ts';
import type { Comparison } from './comparison.ts';
import { figuresSection, differencesSection } from './compared-tables.ts';
import { indicatorsSection, startsSection, turnsSection } from './compared-pictures.ts';

const sections: readonly ((comparison: Comparison) => ShownSection | undefined)[] = [
  figuresSection,
  differencesSection,
  indicatorsSection,
  turnsSection,
  airSharesSection,
  workSharesSection,
  startsSection,
];

/** Two to `MOST_RUNS` runs; assets and units as for `reportHtml`. */
export function comparisonHtml(
  comparison: Comparison,
  assets: ReportAssets,
  units: UnitSystem = unitSystem(),
): string {
  return inUnits(units, () => {
    const shown = sections.flatMap((section) => section(comparison) ?? []);
    const title = comparison.runs.map(({ name }) => name).join(' against ');
    const body = sheetBody({
      kind: `comparison of ${comparison.runs.length} runs`,
      title,
      sections: shown,
      files: `${reportFileNames.comparedFigures} and ${reportFileNames.comparedTurns}`,
    });
    const data = { charts: shown.flatMap(({ charts }) => charts ?? []) };
    return pageText({ title: `${title} – tickover comparison`, body, data }, assets);
  });
}
