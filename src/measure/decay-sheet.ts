/** What the sheet of a pressure decay says, and the test it makes. */
import { count, optional, part, pureNumber, quantity, readings } from '../kinds/describe.ts';
import type { Complaint } from '../kinds/kind.ts';
import type { Values } from '../kinds/parameter.ts';
import { coolingTimeConstant } from '../gas/still-air-cooling.ts';
import { between } from '../parts/leaks/leak-places.ts';
import type { LeakConditions } from './equivalent-leak.ts';
import { gapShapes } from './gap-shapes/registry.ts';
import type { TestContext } from './test-context.ts';
import { gaugeText } from './words.ts';

const pressures = { min: 5e4, max: 5e6 };

export const decayParameters = {
  between,
  volume: quantity(
    'volume',
    { min: 1e-8, max: 10 },
    '95 cm3',
    'What held the air: cylinder or chest with its passages, hose and gauge; fill it with water to measure.',
  ),
  volume_within: pureNumber(
    { min: 0, max: 0.5, default: 0.05 },
    '5 %',
    'How far the volume may be out, either way.',
  ),
  gauge_step: quantity(
    'pressure difference',
    { min: 1, max: 1e5 },
    '0.02 bar',
    'The least change of the gauge that was read: half a division of a dial, the last digit of a display.',
  ),
  waited: quantity(
    'time',
    { min: 0, max: 1e5, default: 0 },
    '30 s',
    'From shutting off to the first reading, while the air took on the temperature of its walls.',
  ),
  temperature: optional(
    quantity('temperature', { min: 230, max: 400 }, '18 degC', 'Of the walls; as the room if not given.'),
  ),
  reference_pressure: optional(
    quantity(
      'pressure',
      pressures,
      '3 bar gauge',
      'Pressure at which the leak is to be told; that of the first reading if not given.',
    ),
  ),
  shape: part(gapShapes, 'As which gap the leak is to be told.'),
  gaps: count({ min: 1, max: 12, default: 1 }, 'How many such gaps side by side share the leak.'),
  readings: readings({
    columns: {
      time: { dimension: 'time', min: 0, max: 1e6, example: 'time_s' },
      pressure: { dimension: 'pressure', ...pressures, example: 'pressure_bar_gauge' },
    },
    optionalColumns: {
      temperature: { dimension: 'temperature', min: 230, max: 450, example: 'temperature_degC' },
    },
    ascending: 'time',
    leastRows: 5,
    mostRows: 5000,
    doc: 'The gauge against time; a column with the temperature of the air inside takes its cooling out.',
    example: 'chest-decay.csv',
  }),
};

export type DecaySheet = Values<typeof decayParameters>;

export function decayComplaints(
  { readings: { file, columns } }: DecaySheet,
  context: TestContext,
): readonly Complaint[] {
  const [first = 0] = columns.pressure;
  if (first > context.atmosphericPressure) return [];
  const expected = 'a first pressure above that of the room; this test lets air out';
  return [
    { path: ['readings'], expected, received: `${gaugeText(first, context.atmosphericPressure)} in ${file}` },
  ];
}

/** Everything the words are made from. */
export interface DecayTest {
  readonly own: DecaySheet;
  readonly context: TestContext;
  readonly time: readonly number[];
  /** As read, and with the warmth taken out where the temperature was read. */
  readonly raw: readonly number[];
  readonly pressure: readonly number[];
  readonly conditions: LeakConditions;
}

export function decayTestOf(own: DecaySheet, context: TestContext): DecayTest {
  const { time, pressure: raw, temperature: air } = own.readings.columns;
  const wall = own.temperature ?? context.atmosphericTemperature;
  const start = time[0]!;
  return {
    own,
    context,
    time: time.map((t) => t - start),
    raw,
    pressure: air === undefined ? raw : raw.map((p, i) => (p * wall) / air[i]!),
    conditions: {
      gas: context.gas,
      pressure: own.reference_pressure ?? raw[0]!,
      against: context.atmosphericPressure,
      temperature: wall,
    },
  };
}

/** Time constant of the cooling as it is to be expected [s]. */
export const likelyCooling = ({ own, raw, conditions }: DecayTest): number =>
  coolingTimeConstant(conditions.gas, own.volume, raw[0]!, conditions.temperature);
