/** What the engine can turn at each speed, and what the load asks: where the lines cross it runs. */
import { columnUnit } from '../../quantity/format.ts';
import { fixed, speedText, torqueText } from '../../verdict/figures.ts';
import { chartNumber, chartValues, type Chart } from '../charts/chart.ts';
import { inRpm } from '../csv/units.ts';
import { chartFigure, cursorSlider } from '../html/figure.ts';
import { dataTable } from '../html/data-table.ts';
import { html } from '../html/markup.ts';
import type { SectionContent } from '../sections/section.ts';

/** Columns of equal length, speeds ascending [rad/s], mean torques of a turn [N m]. */
export interface TorqueSpeed {
  readonly speed: ArrayLike<number>;
  /** At the shaft, friction of the engine taken off. */
  readonly engine: ArrayLike<number>;
  readonly load: ArrayLike<number>;
  /** Where it settles, if it does. */
  readonly settled?: number;
}

const GROUP = 'torque-speed';

export function torqueSpeedContent(curve: TorqueSpeed): SectionContent {
  const unit = columnUnit('torque');
  const chart: Chart = {
    id: 'torque-speed',
    group: GROUP,
    x: { label: 'Speed [rpm]', values: Array.from(curve.speed, (speed) => chartNumber(inRpm(speed))) },
    y: { label: `Torque [${unit.label}]` },
    lines: [
      { label: 'engine, at the shaft', ink: 0, values: chartValues(curve.engine, unit.of) },
      { label: 'load', ink: 1, values: chartValues(curve.load, unit.of) },
    ],
    marks:
      curve.settled === undefined
        ? []
        : [{ at: chartNumber(inRpm(curve.settled)), label: `settles at ${speedText(curve.settled)}` }],
  };
  const title = titleOf(curve);
  return {
    body: html`${chartFigure({ chart, title, alternative: `Mean torque of the engine and of the load against speed. ${title}.` })}
    ${cursorSlider(GROUP, 'Speed [rpm]')}
    ${dataTable({
      caption: 'Torques speed by speed',
      head: ['Speed [rpm]', `Engine [${unit.label}]`, `Load [${unit.label}]`],
      rows: Array.from(curve.speed, (speed, i) => [
        fixed(inRpm(speed), 0),
        fixed(unit.of(curve.engine[i] ?? NaN), unit.decimals),
        fixed(unit.of(curve.load[i] ?? NaN), unit.decimals),
      ]),
    })}`,
    charts: [chart],
  };
}

function titleOf({ speed, engine, load, settled }: TorqueSpeed): string {
  const margins = Array.from(speed, (_, i) => (engine[i] ?? NaN) - (load[i] ?? NaN));
  const best = margins.reduce((a, b) => Math.max(a, b), -Infinity);
  const at = speed[margins.indexOf(best)] ?? NaN;
  if (best <= 0) return 'At no speed does the engine turn more than the load asks';
  const running = settled === undefined ? '' : `It runs where the lines cross, at ${speedText(settled)}; `;
  return `${running}${running === '' ? 'The' : 'the'} engine has most to spare at ${speedText(at)}, ${torqueText(best)}`;
}
