/** Indicator diagrams, turns and starts of several runs on the same axes. */
import { columnUnit } from '../../quantity/format.ts';
import type { RunResult, SettledCycle } from '../../run/result.ts';
import { fixed, shareText, speedText, workText } from '../../verdict/figures.ts';
import { chartNumber, chartValues, type Chart, type ChartLine } from '../charts/chart.ts';
import { inkDashes } from '../charts/inks.ts';
import { inDegrees, inRpm } from '../csv/units.ts';
import { reportFileNames } from '../file-names.ts';
import type { ShownSection } from '../html/body.ts';
import { dataTable } from '../html/data-table.ts';
import { chartFigure, cursorSlider, lineSwatch, type ChartFigure } from '../html/figure.ts';
import { html, svg, type Markup } from '../html/markup.ts';
import { prose } from '../html/prose.ts';
import { paperSize } from '../svg/paper.ts';
import { loopPath, pressureVolumePaper } from '../svg/pressure-volume.ts';
import { labelOf, letterOf, type ComparedRun, type Comparison } from './comparison.ts';

/** A run that settled, with its place among all of them: its letter and its ink. */
interface SettledRun {
  readonly label: string;
  readonly ink: number;
  readonly cycle: SettledCycle;
  readonly result: RunResult;
}

function settledRuns(runs: readonly ComparedRun[]): SettledRun[] {
  return runs.flatMap((run, ink) => {
    const cycle = run.result.settled;
    return cycle === undefined ? [] : [{ label: labelOf(run, ink), ink, cycle, result: run.result }];
  });
}

export function indicatorsSection({ runs }: Comparison): ShownSection | undefined {
  const settled = settledRuns(runs);
  if (settled.length === 0) return undefined;
  const works = settled.map(({ ink, cycle }) => `${letterOf(ink)} ${workText(cycle.work.indicated)}`);
  const title = `The area of a loop is the work of a turn: ${works.join(', ')}`;
  return {
    id: 'indicators',
    heading: 'Work of one turn',
    body: html`<figure>
      <figcaption>${prose(title)}</figcaption>
      <div class="beside">
        ${loops(settled, `Indicator diagrams, cylinder pressure against volume. ${title}.`)}
        <div>
          <ul class="key column">
            ${settled.map(({ label, ink }) => html`<li>${swatch(ink)}${label}</li>`)}
          </ul>
          <p class="note">Every point is in ${reportFileNames.comparedTurns}.</p>
        </div>
      </div>
    </figure>`,
  };
}

const swatch = (ink: number): Markup => lineSwatch(ink, (inkDashes[ink] ?? []).join(' '));

function loops(settled: readonly SettledRun[], alternative: string): Markup {
  const roomOf = ({ result }: SettledRun): number => result.engine.atmosphericPressure;
  const paper = pressureVolumePaper(
    settled.map((run) => [run.cycle.profile.ends[0], roomOf(run)]),
    [0, ...settled.map((run) => run.result.engine.supplyPressure - roomOf(run))],
  );
  const paths = settled.map(
    (run) =>
      svg`<path class="compared line-${run.ink}" stroke-dasharray="${(inkDashes[run.ink] ?? []).join(' ')}" d="${loopPath(run.cycle.profile.ends[0], roomOf(run), paper)}"/>`,
  );
  return svg`<svg class="drawing" viewBox="0 0 ${paperSize.width} ${paperSize.height}" role="img" aria-label="${alternative}">${paper.grid}${paths}</svg>`;
}

const TURN = 'turn';
/** Rows of the table: every so many degrees. */
const TABLE_STEP = 30;

export function turnsSection({ runs }: Comparison): ShownSection | undefined {
  const settled = settledRuns(runs);
  const [first] = settled;
  if (first === undefined) return undefined;
  const angles = Array.from(first.cycle.profile.crankAngle, (angle) => chartNumber(inDegrees(angle)));
  const chart = (id: string, label: string, lines: readonly ChartLine[]): Chart => ({
    id,
    group: TURN,
    x: { label: 'Crank angle after top dead centre [°]', values: angles, steps: [15, 30, 45, 90] },
    y: { label },
    lines,
    marks: [],
  });
  const bars = columnUnit('pressure difference');
  const torque = columnUnit('torque');
  const figures: ChartFigure[] = [
    {
      chart: chart(
        'pressures',
        `Pressure [${bars.label} gauge]`,
        settled.map(({ label, ink, cycle, result }) => ({
          label,
          ink,
          values: chartValues(cycle.profile.ends[0].pressure, (p) =>
            bars.of(p - result.engine.atmosphericPressure),
          ),
        })),
      ),
      title: `Cut-off: ${settled.map(({ ink, cycle }) => `${letterOf(ink)} at ${shareText(cycle.cutOffFraction)}`).join(', ')} of the stroke`,
      alternative: 'Cylinder pressure of each run over one turn.',
    },
    {
      chart: chart(
        'torques',
        `Torque [${torque.label}]`,
        settled.map(({ label, ink, cycle }) => ({
          label,
          ink,
          values: chartValues(driving(cycle), torque.of),
        })),
      ),
      title: `The speed swings within a turn by ${settled.map(({ ink, cycle }) => `${letterOf(ink)} ${shareText(cycle.speedFluctuation)}`).join(', ')}`,
      alternative: 'Torque of air and inertia of each run over one turn.',
    },
  ];
  return {
    id: 'turns',
    heading: 'Through one turn',
    body: html`${figures.map(chartFigure)} ${cursorSlider(TURN, 'Crank angle [°]')}
    ${dataTable({
      caption: `Cylinder pressures in steps of ${TABLE_STEP}°`,
      head: ['Crank [°]', ...settled.map(({ label }) => `${label} [${bars.label} gauge]`)],
      rows: Array.from({ length: 360 / TABLE_STEP + 1 }, (_, i) => i * TABLE_STEP).map((row) => [
        String(row),
        ...settled.map(({ cycle, result }) =>
          fixed(
            bars.of((cycle.profile.ends[0].pressure[row] ?? NaN) - result.engine.atmosphericPressure),
            bars.decimals,
          ),
        ),
      ]),
    })}`,
    charts: figures.map((figure) => figure.chart),
  };
}

const driving = ({ profile }: SettledCycle): Float64Array =>
  profile.gasTorque.map((torque, i) => torque + (profile.inertiaTorque[i] ?? NaN));

/** Points of a start that are drawn. */
const START_POINTS = 400;
const TABLE_ROWS = 12;

export function startsSection({ runs }: Comparison): ShownSection | undefined {
  const longest = Math.max(...runs.map(({ result }) => result.trace.time.at(-1) ?? 0));
  if (!(longest > 0)) return undefined;
  const times = Array.from({ length: START_POINTS + 1 }, (_, i) => (longest * i) / START_POINTS);
  const speeds = runs.map(({ result }) => speedsAt(result.trace, times));
  const chart: Chart = {
    id: 'starts',
    group: 'start',
    x: { label: 'Time since the air was turned on [s]', values: times.map(chartNumber) },
    y: { label: 'Speed [rpm]' },
    lines: runs.map((run, ink) => ({
      label: labelOf(run, ink),
      ink,
      values: chartValues(speeds[ink] ?? [], inRpm),
    })),
    marks: [],
  };
  const ends = runs.map(({ result: { settled } }, i) =>
    settled === undefined ? `${letterOf(i)} none` : `${letterOf(i)} ${speedText(settled.speed)}`,
  );
  const title = `Settled speeds: ${ends.join(', ')}`;
  return {
    id: 'starts',
    heading: 'From rest',
    body: html`${chartFigure({ chart, title, alternative: `Speed of each run against time. ${title}.` })}
    ${cursorSlider('start', 'Time [s]')}
    ${dataTable({
      caption: `The starts at ${TABLE_ROWS + 1} moments`,
      head: ['Time [s]', ...runs.map((run, i) => `${labelOf(run, i)} [rpm]`)],
      rows: Array.from({ length: TABLE_ROWS + 1 }, (_, i) => Math.round((i * START_POINTS) / TABLE_ROWS)).map(
        (row) => [
          fixed(times[row] ?? NaN, 2),
          ...speeds.map((values) =>
            Number.isFinite(values[row]) ? fixed(inRpm(values[row] ?? NaN), 1) : '–',
          ),
        ],
      ),
    })}`,
    charts: [chart],
  };
}

/** The speed at some ascending times, between recorded moments by a straight line; none after the end. */
function speedsAt({ time, speed }: RunResult['trace'], times: readonly number[]): number[] {
  let row = 0;
  return times.map((at) => {
    while (row + 2 < time.length && (time[row + 1] ?? NaN) < at) row += 1;
    const [t0 = NaN, t1 = NaN] = [time[row], time[row + 1]];
    const [v0 = NaN, v1 = NaN] = [speed[row], speed[row + 1]];
    if (at > t1 * (1 + 1e-9)) return NaN;
    return t1 > t0 ? v0 + ((v1 - v0) * (at - t0)) / (t1 - t0) : v0;
  });
}
