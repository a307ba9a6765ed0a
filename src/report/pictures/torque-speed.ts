/** What the engine can turn at each speed, and what the load asks: where the lines cross it runs. */
import { columnUnit } from '../../quantity/format.ts';
import type { Drive, OperatingPoint, TorqueCurve } from '../../run/drive-result.ts';
import { fixed, speedText, torqueText } from '../../verdict/figures.ts';
import { chartNumber, chartValues, type Chart } from '../charts/chart.ts';
import { inRpm } from '../csv/units.ts';
import { dataTable } from '../html/data-table.ts';
import { chartFigure, cursorSlider } from '../html/figure.ts';
import { html } from '../html/markup.ts';
import { reportFileNames } from '../file-names.ts';
import type { SectionContent } from '../sections/section.ts';

const GROUP = 'torque-speed';

/** Speeds beyond so many times the fastest at which it runs are left to the table. */
const DRAWN = 3;
const LEAST_DRAWN = 4;

/** How far the crossing of two lines between coarse speeds may lie from the run that it stands for. */
const SAME_SPEED = 0.1;

/** `settled` is the speed of a run [rad/s], better known than the crossing of two lines. */
export function torqueSpeedContent(drive: Drive, settled?: number): SectionContent {
  const { curve, load } = drive;
  const unit = columnUnit('torque');
  const tight = torqueAtSpeeds(drive.curveWithoutLeaks, curve.speed);
  const running = runningSpeeds(drive.operatingPoints, settled);
  const fastest = DRAWN * (running.at(-1) ?? Infinity);
  const drawn = curve.speed.filter((speed, i) => i < LEAST_DRAWN || speed <= fastest);
  const line = (values: Float64Array) => chartValues(values.subarray(0, drawn.length), unit.of);
  const chart: Chart = {
    id: 'torque-speed',
    group: GROUP,
    x: { label: 'Speed [rpm]', values: Array.from(drawn, (speed) => chartNumber(inRpm(speed))) },
    y: { label: `Torque [${unit.label}]` },
    lines: [
      { label: 'engine', ink: 0, values: line(curve.torque) },
      { label: 'load', ink: 1, values: line(load) },
      { label: 'engine without leaks', ink: 2, values: line(tight) },
    ],
    marks: running.map((speed) => ({
      at: chartNumber(inRpm(speed)),
      label: `runs at ${speedText(speed)}`,
    })),
  };
  const title = titleOf(drive, running);
  return {
    body: html`${chartFigure({
        chart,
        title,
        alternative: `Mean torque of the engine and of the load against speed. ${title}.`,
      })}
      ${cursorSlider(GROUP, 'Speed [rpm]')}
      ${dataTable({
        caption: 'Torques speed by speed',
        head: [
          'Speed [rpm]',
          `Engine [${unit.label}]`,
          `Load [${unit.label}]`,
          `Without leaks [${unit.label}]`,
        ],
        rows: Array.from(curve.speed, (speed, i) => [
          fixed(inRpm(speed), 0),
          ...[curve.torque[i], load[i], tight[i]].map((torque) =>
            torque === undefined || Number.isNaN(torque) ? '–' : fixed(unit.of(torque), unit.decimals),
          ),
        ]),
      })}
      <p class="note">
        Mean torque of a turn at the shaft, the engine's own friction taken off, at a speed that is held. The
        same is in ${reportFileNames.torque}, with the air it takes.
      </p>`,
    charts: [chart],
  };
}

/** Speeds at which it stays, in ascending order. */
function runningSpeeds(points: readonly OperatingPoint[], settled: number | undefined): number[] {
  return points
    .filter(({ stable }) => stable)
    .map(({ speed }) =>
      settled !== undefined && Math.abs(settled / speed - 1) < SAME_SPEED ? settled : speed,
    );
}

/** Of a curve at speeds of another one; both go up by the same steps, and one may end sooner. */
export function torqueAtSpeeds(curve: TorqueCurve, speeds: Float64Array): Float64Array {
  return speeds.map((speed) => {
    const i = curve.speed.findIndex((own) => Math.abs(own - speed) < 1e-9 * speed);
    return curve.torque[i] ?? NaN;
  });
}

function titleOf({ curve, load, stallTorque }: Drive, running: readonly number[]): string {
  const spare = curve.torque.map((torque, i) => torque - (load[i] ?? NaN));
  const best = spare.reduce((a, b) => Math.max(a, b), -Infinity);
  const stall = `it takes ${torqueText(stallTorque)} to stall it`;
  if (best <= 0) return `At no speed does the engine turn more than the load asks; ${stall}`;
  if (running.length === 0)
    return `The load asks less than the engine turns at every speed that was tried; ${stall}`;
  const where = running.map(speedText).join(' and at ');
  return `Engine and load agree at ${where}; ${stall}`;
}
