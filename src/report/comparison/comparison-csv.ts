/** The figures of compared runs, a row for each run. Units as in the other tables, whatever the page shows. */
import { csvText } from '../csv/table.ts';
import { inBar, inCubicCentimetres, inDegrees, same } from '../csv/units.ts';
import { letterOf, type Comparison } from './comparison.ts';
import { comparedFigures } from './compared-figures.ts';

/** CSV by RFC 4180: a row for each run, its figures with their units in the header, then the keys that differ. */
export function comparisonCsv({ runs, differences }: Comparison): string {
  return csvText([
    { header: 'run', texts: runs.map(({ name }) => name) },
    { header: 'title', texts: runs.map(({ result }) => result.title) },
    { header: 'outcome', texts: runs.map(({ result }) => result.outcome.kind) },
    ...comparedFigures.map(({ header, value }) => ({
      header,
      values: runs.map(({ result }) => (result.settled === undefined ? NaN : value(result.settled, result))),
      convert: same,
    })),
    ...differences.map(({ key, values }) => ({
      header: `given ${key}`,
      texts: values.map((value) => value ?? ''),
    })),
  ]);
}

/**
 * The turns of all runs that settled, a row for every crank degree; a letter says whose a column is. Undefined if none did.
 */
export function comparedTurnsCsv({ runs }: Comparison): string | undefined {
  const settled = runs.flatMap(({ result: { settled: cycle } }, i) =>
    cycle === undefined ? [] : [{ letter: letterOf(i), ...cycle.profile }],
  );
  const [first] = settled;
  if (first === undefined) return undefined;
  return csvText([
    { header: 'crank_angle_deg', values: first.crankAngle, convert: inDegrees },
    ...settled.flatMap(({ letter, ends: [end], gasTorque, inertiaTorque }) => [
      { header: `${letter}_cylinder_volume_cm3`, values: end.volume, convert: inCubicCentimetres },
      { header: `${letter}_cylinder_pressure_bar_abs`, values: end.pressure, convert: inBar },
      { header: `${letter}_gas_torque_N_m`, values: gasTorque, convert: same },
      { header: `${letter}_inertia_torque_N_m`, values: inertiaTorque, convert: same },
    ]),
  ]);
}
