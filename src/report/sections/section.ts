/** A section of the report. The registry beside this file lists them in the order of the page. */
import type { RunResult } from '../../run/result.ts';
import type { Verdict } from '../../verdict/verdict.ts';
import type { Chart } from '../charts/chart.ts';
import type { WorkshopPreview } from '../../workshop/preview.ts';
import type { Markup } from '../html/markup.ts';

/** What the page can show besides the run itself. */
export interface ReportExtras {
  readonly workshop?: WorkshopPreview;
}

export interface SectionContent {
  readonly body: Markup;
  /** Charts that the body has placeholders for. */
  readonly charts?: readonly Chart[];
}

export interface Section {
  readonly id: string;
  readonly heading: string;
  /** Undefined when this result has nothing to show here; the section is then left out. */
  readonly content: (result: RunResult, verdict: Verdict, extras: ReportExtras) => SectionContent | undefined;
}
