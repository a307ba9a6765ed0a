/** A sweep: its answer in words, and where one or two settings vary a picture of speed, air and start over them. */
import type { MeasureName } from '../../study/measures.ts';
import type { Variation } from '../../study/variations/variation.ts';
import { figure } from '../../verdict/figures.ts';
import { sweepWords, type SweepTally, type SweptEngine } from '../../verdict/studies/sweep-words.ts';
import { chartNumber, type Chart } from '../charts/chart.ts';
import type { ShownSection } from '../html/body.ts';
import { chartFigure, cursorSlider } from '../html/figure.ts';
import { html } from '../html/markup.ts';
import type { ReportAssets } from '../html/page.ts';
import { heatMap, type HeatCell } from '../svg/heat-map.ts';
import { axisLabel, axisName, axisValue, unitLabel } from './measure-axes.ts';
import { studyPage, type About } from './study-page.ts';

/** A sweep as its page needs it. */
export interface Swept {
  readonly variations: readonly Variation[];
  /** Whether every value stands with every other. */
  readonly grid: boolean;
  readonly conditions: readonly string[];
  readonly tally: SweepTally;
  /** All engines in their order; empty when they are too many for a picture. */
  readonly engines: readonly SweptEngine[];
}

/** The page of a sweep. */
export function sweepPage(about: About, swept: Swept, assets: ReportAssets): string {
  const paths = swept.variations.map(({ paths: own }) => own[0] ?? '');
  return studyPage(
    {
      about,
      kind: 'sweep',
      words: sweepWords(paths, swept.conditions, swept.tally),
      sections: pictures(swept),
      files: 'sweep.csv',
    },
    assets,
  );
}

const shownMeasures: readonly MeasureName[] = ['speed', 'airPerWork', 'startShare'];

/** Of those the engines have. */
const measuresOf = (engines: readonly SweptEngine[]): readonly MeasureName[] =>
  shownMeasures.filter((name) => engines.some(({ values }) => Number.isFinite(values[name] ?? NaN)));

function pictures(swept: Swept): ShownSection[] {
  const { variations, engines, grid } = swept;
  const [first, second] = variations;
  if (engines.length < 2 || first === undefined) return [];
  if (second === undefined) return first.unit === undefined ? [] : [lines(first, engines)];
  if (variations.length > 2 || !grid) return [];
  return measuresOf(engines).map((name) => field(name, first, second, engines));
}

function lines(variation: Variation, engines: readonly SweptEngine[]): ShownSection {
  const group = 'sweep';
  const path = variation.paths[0] ?? '';
  const points = engines
    .map((own) => ({ x: chartNumber(Number.parseFloat((own.texts[0] ?? '').replace('−', '-'))), own }))
    .sort((a, b) => a.x - b.x);
  const values = (name: MeasureName, of: (own: SweptEngine) => boolean): (number | null)[] =>
    points.map(({ own }) => (of(own) ? axisValue(name, own) : null));
  const failing = points.some(({ own }) => own.holds === false && own.outcome === 'settled');
  const charts = measuresOf(engines).map((name): Chart => ({
    id: `sweep-${name}`,
    group,
    x: { label: path + unitLabel(variation.unit), values: points.map(({ x }) => x) },
    y: { label: axisLabel(name) },
    lines: [
      {
        label: failing ? 'meets the conditions' : 'runs',
        ink: 0,
        values: values(name, ({ holds }) => holds !== false),
      },
      ...(failing
        ? [{ label: 'runs, but does not', ink: 1, values: values(name, ({ holds }) => holds === false) }]
        : []),
    ],
    marks: [],
  }));
  return {
    id: 'along',
    heading: 'Along the range',
    body: html`${charts.map((chart) =>
      chartFigure({
        chart,
        title: chart.y.label.replace(/ \[.*/u, ''),
        alternative: `${chart.y.label} against ${path}.`,
      }),
    )}
    ${cursorSlider(group, path + unitLabel(variation.unit))}`,
    charts,
  };
}

/** The first variation upwards, the second along. */
function field(
  name: MeasureName,
  up: Variation,
  along: Variation,
  engines: readonly SweptEngine[],
): ShownSection {
  const cells = Array.from({ length: up.count }, (_, row) =>
    Array.from({ length: along.count }, (__, column): HeatCell => {
      const own = engines[row * along.count + column];
      const value = own ? axisValue(name, own) : null;
      return {
        value: value ?? undefined,
        text: value === null ? '' : figure(value),
        runs: own?.outcome === 'settled',
        holds: own?.outcome === 'settled' && own.holds !== false,
      };
    }),
  );
  const label = axisLabel(name);
  return {
    id: `field-${name}`,
    heading: axisName(name),
    body: html`<figure>
      <figcaption>${label}; hatched where the engine does not run</figcaption>
      <div class="scroll" role="region" aria-label="${label}" tabindex="0">
        ${heatMap({ x: axisOf(along), y: axisOf(up), cells, alternative: `${label} over ${up.paths[0] ?? ''} and ${along.paths[0] ?? ''}; the numbers are in sweep.csv.` })}
      </div>
      <p class="note">
        The thick line parts engines that run from those that do not, the dashed one those that meet the
        conditions from those that do not.
      </p>
    </figure>`,
  };
}

const axisOf = ({ paths, unit, count, level }: Variation) => ({
  label: (paths[0] ?? '') + unitLabel(unit),
  ticks: Array.from({ length: count }, (_, i) =>
    unit === undefined || unit === '' ? level(i) : level(i).replace(unit, '').trim(),
  ),
});
