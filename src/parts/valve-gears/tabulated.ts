/**
 * Port areas from a table of crank angles: a valve that was drawn elsewhere, or measured.
 *
 * Between rows the area follows a monotone cubic (numerics/periodic-cubic.ts): it passes through every row, overshoots
 * none, and its slope is continuous. Straight lines would kink at every row, and every kink is a stop for the
 * integrator: hundreds a turn. With the cubic only the ends of the shut stretch are edges, because there a port that has
 * let nothing through begins to.
 *
 * A port is shut between neighbouring rows of zero; its events are the ends of that stretch.
 */
import { pureNumber, quantity, table } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import type { Values } from '../../kinds/parameter.ts';
import { periodicCubic } from '../../numerics/periodic-cubic.ts';
import { FULL_TURN, wrappedAngle } from '../crank-positions.ts';
import type { PartContext } from '../part-context.ts';
import { port, type AreaLaw } from '../passage.ts';
import { orderedEdges, steadyDrag, type ValveGear } from './valve-gear.ts';
import { measuring } from '../measuring.ts';

const area = { dimension: 'area', unit: 'mm2', min: 0, max: 0.1 } as const;

const parameters = {
  areas: table({
    argument: {
      name: 'crank_angle',
      dimension: 'angle',
      unit: 'deg',
      min: 0,
      max: FULL_TURN,
      largestStep: FULL_TURN / 12,
    },
    columns: { admission_area: area, exhaust_area: area },
    mostRows: 7201,
    doc: 'Narrowest cross-section of both ports over one turn, in a file beside the scenario; 0 where a port is shut.',
    measure:
      'Degree disc and a window: turn the crank in steps of 10° and measure how much of each port is ' +
      'uncovered, or take the areas from a drawing.',
    example: 'valve-areas.csv',
  }),
  discharge_coefficient: pureNumber(
    { min: 0.3, max: 1, default: 0.7 },
    '0.7',
    'Of both ports; sharp edges 0.6–0.8. Write 1 if the table holds effective areas.',
    measuring.dischargeCoefficient,
  ),
  drive_torque: quantity(
    'torque',
    { min: 0, max: 100, default: 0 },
    '0.05 N m',
    'Mean torque at the crankshaft that driving the gear takes.',
    measuring.driveTorque,
  ),
};

type Tabulated = Values<typeof parameters>;
type PortName = 'admission' | 'exhaust';

interface Timing {
  readonly opens: readonly number[];
  readonly closes: readonly number[];
}

/** Where shut stretches, that is neighbouring rows of zero, end and begin [rad]. */
function timingOf({ areas }: Tabulated, name: PortName): Timing {
  const values = areas.columns[`${name}_area`];
  const rows = areas.argument.length - 1;
  const shutAfter = (row: number): boolean => values[row] === 0 && values[row + 1] === 0;
  const turningInto = (shut: boolean): number[] =>
    areas.argument.filter((_, row) => {
      const before = (row + rows - 1) % rows;
      return row < rows && shutAfter(row) === shut && shutAfter(before) !== shut;
    });
  return { opens: turningInto(false), closes: turningInto(true) };
}

function portComplaints(gear: Tabulated, name: PortName): Complaint[] {
  const { file, columns } = gear.areas;
  const { opens } = timingOf(gear, name);
  if (opens.length === 1) return [];
  const neverOpens = columns[`${name}_area`].every((value) => value === 0);
  const never = neverOpens ? 'never opens' : 'never shuts';
  return [
    {
      path: ['areas'],
      expected: `an ${name} port that opens and shuts once in the turn`,
      received: `one in "${file}" that ${opens.length === 0 ? never : `opens ${opens.length} times`}`,
      ...(neverOpens
        ? {}
        : { hint: 'Write 0 in every row where the port is shut; what leaks there belongs under `leaks`.' }),
    },
  ];
}

function build(gear: Tabulated, { gas }: PartContext): ValveGear {
  const areaOf = (name: PortName): AreaLaw => {
    const curve = periodicCubic(gear.areas.argument, gear.areas.columns[`${name}_area`]);
    return (angle) => gear.discharge_coefficient * curve.value(angle);
  };
  const admission = timingOf(gear, 'admission');
  const exhaust = timingOf(gear, 'exhaust');
  return {
    ports: [
      port(gas, 'admission', { name: 'admission port', from: 'chest', to: 'cylinder' }, areaOf('admission')),
      port(gas, 'exhaust', { name: 'exhaust port', from: 'cylinder', to: 'atmosphere' }, areaOf('exhaust')),
    ],
    sealingGaps: [],
    edges: orderedEdges([admission, exhaust].flatMap(({ opens, closes }) => [...opens, ...closes])),
    events: {
      admission: wrappedAngle(admission.opens[0]!),
      cutOff: wrappedAngle(admission.closes[0]!),
      release: wrappedAngle(exhaust.opens[0]!),
      compression: wrappedAngle(exhaust.closes[0]!),
    },
    derivedSizes: [],
    ...steadyDrag(gear.drive_torque),
  };
}

/** A table to start from: both ports open and shut along straight lines, a row every ten degrees. */
function firstTable(): string {
  const area = (angle: number, middle: number, halfOpen: number, most: number): number =>
    Math.min(most, Math.max(0, halfOpen - Math.abs(angle - middle)));
  const rows = Array.from({ length: 37 }, (_, i) => 10 * i).map(
    (angle) => `${angle},${area(angle % 360, 50, 50, 30)},${area(angle, 250, 80, 40)}`,
  );
  return ['crank_angle_deg,admission_area_mm2,exhaust_area_mm2', ...rows, ''].join('\n');
}

export const tabulated = kindOf({
  kind: 'tabulated',
  doc: 'Port areas from a table of crank angles, for a valve drawn elsewhere or measured.',
  parameters,
  firstEngine: {
    values: { 'valve_gear.areas': 'valve-areas.csv' },
    files: { 'valve-areas.csv': firstTable() },
  },
  complaints: (gear) => [...portComplaints(gear, 'admission'), ...portComplaints(gear, 'exhaust')],
  build,
});
