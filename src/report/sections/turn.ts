/** One settled turn against the crank angle: pressures, port areas, torques, with one cursor for all three. */
import { columnUnit } from '../../quantity/format.ts';
import type { CycleProfile, EngineFacts, SettledCycle } from '../../run/result.ts';
import { openTogether, releasePressure, workingPressure } from '../../verdict/cycle-reading.ts';
import { angleText, columnText, fixed, gaugeText, shareText, torqueText } from '../../verdict/figures.ts';
import { placeText } from '../../verdict/ends.ts';
import { chartNumber, chartValues, type Chart, type ChartLine, type ChartMark } from '../charts/chart.ts';
import { inDegrees } from '../csv/units.ts';
import { reportFileNames } from '../file-names.ts';
import { chartFigure, cursorSlider, type ChartFigure } from '../html/figure.ts';
import { dataTable } from '../html/data-table.ts';
import { html, type Content, type Markup } from '../html/markup.ts';
import { eventPoints } from '../svg/indicator-diagram.ts';
import type { Section } from './section.ts';

const GROUP = 'turn';
/** Inks for the pressures of further ends; those beyond are left to the table of numbers. */
const FURTHER_INKS = [2, 3, 4, 5];
/** Rows of the table: every so many degrees. */
const TABLE_STEP = 15;

export const turnSection: Section = {
  id: 'turn',
  heading: 'Through one turn',
  content: ({ settled, engine }) => {
    if (settled === undefined) return undefined;
    const figures = [pressures(settled, engine), portAreas(settled), torques(settled)];
    return {
      body: html`${figures.map(chartFigure)} ${cursorSlider(GROUP, 'Crank angle [°]')}
        ${turnTable(settled.profile, engine)}
        <p class="note">
          The same turn degree by degree, with temperatures and every flow, is in ${reportFileNames.cycle}.
        </p>`,
      charts: figures.map(({ chart }) => chart),
    };
  },
};

const gaugeOf =
  ({ atmosphericPressure }: EngineFacts) =>
  (pressure: number): number =>
    columnUnit('pressure difference').of(pressure - atmosphericPressure);

const gaugeUnit = (): string => `${columnUnit('pressure difference').label} gauge`;

function turnChart(
  cycle: SettledCycle,
  id: string,
  yLabel: string,
  lines: readonly ChartLine[],
  labelled = false,
): Chart {
  return {
    id,
    group: GROUP,
    x: {
      label: 'Crank angle after top dead centre [°]',
      values: Array.from(cycle.profile.crankAngle, (angle) => chartNumber(inDegrees(angle))),
      steps: [15, 30, 45, 90],
    },
    y: { label: yLabel },
    lines,
    marks: eventPoints(cycle).map(({ name, angle }): ChartMark => {
      const at = chartNumber(inDegrees(angle));
      return labelled ? { at, label: name } : { at };
    }),
  };
}

function pressures(cycle: SettledCycle, engine: EngineFacts): ChartFigure {
  const { profile } = cycle;
  const [first, ...others] = profile.ends;
  const gauge = gaugeOf(engine);
  const released = releasePressure(cycle);
  const left = gaugeText(released, engine.atmosphericPressure);
  const wasteful = released - engine.atmosphericPressure > 0.1 * workingPressure(engine);
  return {
    chart: turnChart(
      cycle,
      'pressures',
      `Pressure [${gaugeUnit()}]`,
      [
        { label: first.name, ink: 0, values: chartValues(first.pressure, gauge) },
        { label: 'valve chest', ink: 1, values: chartValues(profile.chestPressure, gauge) },
        ...others.flatMap((end, i) => {
          const ink = FURTHER_INKS[i];
          return ink === undefined
            ? []
            : [{ label: end.name, ink, values: chartValues(end.pressure, gauge) }];
        }),
      ],
      true,
    ),
    title: `The admission shuts at ${shareText(cycle.cutOffFraction)} of the stroke; the air is ${wasteful ? 'still ' : ''}at ${left} when the exhaust opens`,
    alternative:
      `Cylinder and chest pressure over one turn. Admission from ${angleText(cycle.events.admission)} to ` +
      `${angleText(cycle.events.cutOff)}, exhaust from ${angleText(cycle.events.release)} to ${angleText(cycle.events.compression)}.`,
    note: aboutEnds(profile),
  };
}

/** What the pictures of an engine with several ends show of them. */
function aboutEnds({ ends }: CycleProfile): Content {
  const [first, ...others] = ends;
  if (others.length === 0) return undefined;
  const drawn = Math.min(ends.length, 1 + FURTHER_INKS.length);
  const some = drawn < ends.length ? ` The first ${drawn} of ${ends.length} working ends are drawn.` : '';
  return html`<p class="note">
    Events, port areas and the numbers below are those of ${placeText(first.name)}; every other end has its
    own, counted from its own dead centre.${some}
  </p>`;
}

function portAreas(cycle: SettledCycle): ChartFigure {
  const areas = columnUnit('area');
  const [end] = cycle.profile.ends;
  const overlap = openTogether(cycle.events);
  const [admission, exhaust] = [largest(end.admissionArea), largest(end.exhaustArea)];
  return {
    chart: turnChart(cycle, 'areas', `Effective area [${areas.label}]`, [
      { label: 'admission', ink: 2, values: chartValues(end.admissionArea, areas.of) },
      { label: 'exhaust', ink: 3, values: chartValues(end.exhaustArea, areas.of) },
    ]),
    title:
      overlap > 0
        ? `Admission and exhaust stand open together for ${angleText(overlap)} of the turn`
        : 'Admission and exhaust are never open together',
    alternative:
      `Effective port areas over one turn: at most ${columnText('area', admission)} for the admission and ` +
      `${columnText('area', exhaust)} for the exhaust.`,
  };
}

const largest = (values: Float64Array): number => values.reduce((a, b) => Math.max(a, b), -Infinity);

function torques(cycle: SettledCycle): ChartFigure {
  const unit = columnUnit('torque');
  const { profile } = cycle;
  const driving = profile.gasTorque.map((torque, i) => torque + (profile.inertiaTorque[i] ?? NaN));
  const resisting = profile.frictionTorque.map((torque, i) => torque + (profile.loadTorque[i] ?? NaN));
  const carried = shortShare(driving, resisting);
  const peak = largest(driving);
  return {
    chart: turnChart(cycle, 'torques', `Torque [${unit.label}]`, [
      { label: 'air and inertia, driving', ink: 0, values: chartValues(driving, unit.of) },
      { label: 'load', ink: 1, values: chartValues(profile.loadTorque, unit.of) },
      { label: 'friction', ink: 4, values: chartValues(profile.frictionTorque, unit.of) },
    ]),
    title: `The drive peaks at ${torqueText(peak)}, and for ${shareText(carried)} of the turn the flywheel has to carry the engine`,
    alternative:
      `Torques at the crankshaft over one turn. The drive of air and inertia peaks at ${torqueText(peak)} at ` +
      `${angleText(profile.crankAngle[driving.indexOf(peak)] ?? NaN)}.`,
  };
}

/** Share of the turn in which the drive is below friction and load. */
function shortShare(driving: Float64Array, resisting: Float64Array): number {
  const rows = driving.subarray(1);
  return rows.filter((torque, i) => torque < (resisting[i + 1] ?? NaN)).length / rows.length;
}

const capitalised = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);

function turnTable(profile: CycleProfile, engine: EngineFacts): Markup {
  const gauge = gaugeOf(engine);
  const [bars, areas, torque] = [columnUnit('pressure difference'), columnUnit('area'), columnUnit('torque')];
  const [end] = profile.ends;
  const rows = Array.from({ length: 360 / TABLE_STEP + 1 }, (_, i) => i * TABLE_STEP);
  const read = (values: Float64Array, row: number): number => values[row] ?? NaN;
  return dataTable({
    caption: `The turn in steps of ${TABLE_STEP}°`,
    head: [
      'Crank [°]',
      `${capitalised(end.name)} [${gaugeUnit()}]`,
      `Chest [${gaugeUnit()}]`,
      `Admission [${areas.label}]`,
      `Exhaust [${areas.label}]`,
      `Air [${torque.label}]`,
      `Friction [${torque.label}]`,
      `Load [${torque.label}]`,
    ],
    rows: rows.map((row) => [
      String(row),
      fixed(gauge(read(end.pressure, row)), bars.decimals),
      fixed(gauge(read(profile.chestPressure, row)), bars.decimals),
      fixed(areas.of(read(end.admissionArea, row)), areas.decimals),
      fixed(areas.of(read(end.exhaustArea, row)), areas.decimals),
      fixed(torque.of(read(profile.gasTorque, row)), torque.decimals),
      fixed(torque.of(read(profile.frictionTorque, row)), torque.decimals),
      fixed(torque.of(read(profile.loadTorque, row)), torque.decimals),
    ]),
  });
}
