/**
 * Let the compressor fill the shut receiver and write down the gauge: the air it really takes in, which is less than its
 * piston displacement and falls as the pressure rises.
 */
import { optional, pureNumber, quantity, readings } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import type { Values } from '../../kinds/parameter.ts';
import { hypot } from '../../numerics/elementary/roots.ts';
import { pumpUpCautions } from '../cautions.ts';
import type { Estimate, Finding, Picture } from '../finding.ts';
import { readingError } from '../interval.ts';
import { pumpUpFit, type PumpUpFit, type Slope } from '../pump-up-fit.ts';
import { stray } from '../straying.ts';
import type { TestContext } from '../test-context.ts';
import {
  estimateText,
  fineUnit,
  gaugeLabel,
  gaugeReading,
  gaugeText,
  percent,
  plain,
  shown,
  written,
} from '../words.ts';

const pressures = { min: 5e4, max: 5e6 };

const parameters = {
  receiver_volume: quantity(
    'volume',
    { min: 1e-4, max: 100 },
    '50 L',
    'Receiver with its pipes up to the shut outlet; water in it takes away from that.',
  ),
  volume_within: pureNumber(
    { min: 0, max: 0.5, default: 0.03 },
    '3 %',
    'How far the volume may be out, either way.',
  ),
  gauge_step: quantity(
    'pressure difference',
    { min: 1, max: 1e5 },
    '0.1 bar',
    'The least change of the gauge that was read.',
  ),
  cooled_pressure: optional(
    quantity(
      'pressure',
      pressures,
      '7.6 bar gauge',
      'The gauge after the compressor stopped at the last reading and the receiver took on the temperature of the room.',
    ),
  ),
  readings: readings({
    columns: {
      time: { dimension: 'time', min: 0, max: 1e5, example: 'time_s' },
      pressure: { dimension: 'pressure', ...pressures, example: 'pressure_bar_gauge' },
    },
    optionalColumns: {
      temperature: { dimension: 'temperature', min: 230, max: 450, example: 'temperature_degC' },
    },
    ascending: 'time',
    leastRows: 5,
    mostRows: 5000,
    doc: 'The gauge against time, nothing drawn off; a column with the temperature of the air inside puts its warmth right.',
    example: 'pump-up.csv',
  }),
};

type Own = Values<typeof parameters>;

function complaints(
  { readings: { columns }, cooled_pressure }: Own,
  context: TestContext,
): readonly Complaint[] {
  const { pressure } = columns;
  const [first, last] = [pressure[0]!, pressure.at(-1)!];
  const gauge = (p: number): string => gaugeText(p, context.atmosphericPressure);
  if (last <= first)
    return [
      {
        path: ['readings'],
        expected: 'a pressure that rises',
        received: `${gauge(first)} at first and ${gauge(last)} at last`,
      },
    ];
  if (cooled_pressure === undefined || (cooled_pressure > first && cooled_pressure <= last)) return [];
  return [
    {
      path: ['cooled_pressure'],
      expected: `between the first and the last reading, ${gauge(first)} and ${gauge(last)}`,
      received: gauge(cooled_pressure),
    },
  ];
}

interface Test {
  readonly own: Own;
  readonly context: TestContext;
  readonly time: readonly number[];
  readonly pressure: readonly number[];
  /** Share of the rise that was not warmth; one if it was not found out. */
  readonly cold: number;
}

function testOf(own: Own, context: TestContext): Test {
  const { time, pressure: raw, temperature } = own.readings.columns;
  const start = time[0]!;
  const pressure =
    temperature === undefined
      ? raw
      : raw.map((p, i) => (p * context.atmosphericTemperature) / temperature[i]!);
  const [first, last] = [pressure[0]!, pressure.at(-1)!];
  const cooled = temperature === undefined ? own.cooled_pressure : undefined;
  return {
    own,
    context,
    time: time.map((t) => t - start),
    pressure,
    cold: cooled === undefined ? 1 : (cooled - first) / (last - first),
  };
}

/** How much warmer than the room the air may be if nothing was done about it: common practice, no source [K]. */
const WARMER = 20;

function build(own: Own, context: TestContext): Finding {
  const test = testOf(own, context);
  const fit = pumpUpFit({ time: test.time, pressure: test.pressure, error: readingError(own.gauge_step) });
  const estimates = estimatesOf(test, fit);
  const [mean] = estimates as [Estimate];
  return {
    usable: true,
    headline: `It delivers ${estimateText(mean)}, as air of the room, between ${span(test)}.`,
    estimates,
    statements: [
      'Free air is counted at the pressure and temperature of the room, as a compressor’s maker should; as ANR, at 100 kPa and ' +
        `20 °C, the mean is ${shown(asReference(mean.value, context), 'volume flow')}.`,
      `Ranges are 95 % intervals: steps of the gauge, scatter about the curve, and ${percent(own.volume_within)} in the volume.`,
    ],
    warnings: warningsOf(test, fit, mean),
    pictures: pictures(test, fit),
    scenario: `compressor:\n  free_air_delivery: ${written(mean.value, 'volume flow')}`,
    next: 'Read the hour meter or a watch over an afternoon: how long it may run of the time is a matter of heat, not of delivery.',
    cautions: pumpUpCautions(own.receiver_volume, own.readings.columns.pressure.at(-1)!, context),
  };
}

/** Room air as a volume at 100 kPa and 20 °C. */
const asReference = (
  flow: number,
  { atmosphericPressure: p, atmosphericTemperature: t }: TestContext,
): number => (flow * p * 293.15) / (100e3 * t);

const span = ({ own, context }: Test): string => {
  const { pressure } = own.readings.columns;
  const [first, last] = [pressure[0]!, pressure.at(-1)!];
  return `${gaugeText(first, context.atmosphericPressure)} and ${gaugeText(last, context.atmosphericPressure)}`;
};

function estimatesOf(test: Test, fit: PumpUpFit): Estimate[] {
  const { own, context, cold } = test;
  const delivery = (name: string, { value, half }: Slope): Estimate => {
    const flow = (value * own.receiver_volume * cold) / context.atmosphericPressure;
    const share = hypot(hypot(half / value, own.volume_within), coolingDoubt(test));
    return { name, value: flow, low: flow * (1 - share), high: flow * (1 + share), dimension: 'volume flow' };
  };
  const { pressure } = own.readings.columns;
  const gauge = (p: number): string => gaugeText(p, context.atmosphericPressure);
  return [
    delivery('Free air delivery, mean', fit.mean),
    delivery(`Free air delivery at ${gauge(pressure[0]!)}`, fit.first),
    delivery(`Free air delivery at ${gauge(pressure.at(-1)!)}`, fit.last),
  ];
}

/** A share for the steps of the gauge in the pressure that was read cold. */
function coolingDoubt({ own, pressure }: Test): number {
  if (own.cooled_pressure === undefined) return 0;
  return (2 * Math.SQRT2 * readingError(own.gauge_step)) / (pressure.at(-1)! - pressure[0]!);
}

function warningsOf({ own, context, cold }: Test, { fit }: PumpUpFit, mean: Estimate): string[] {
  const { columns } = own.readings;
  const known = columns.temperature !== undefined || own.cooled_pressure !== undefined;
  const room = context.atmosphericTemperature;
  const less = (mean.value * room) / (room + WARMER);
  return [
    ...(known
      ? []
      : [
          `Air comes warm from a compressor, and warm air reads as more. Were the receiver ${WARMER} K warmer at the end than at ` +
            `the beginning, the delivery would be nearer ${shown(less, 'volume flow')}. Read the gauge again when it has cooled and ` +
            'give it as cooled_pressure.',
        ]),
    ...(cold < 0.97
      ? [`${percent(1 - cold)} of the rise was warmth, and has been taken off alike all the way.`]
      : []),
    ...(stray(fit.residuals)
      ? [
          'The gauge did not rise along a smooth curve: air was drawn off, a valve let go, or the gauge sticks.',
        ]
      : []),
  ];
}

function pictures({ own, context, time, pressure }: Test, fit: PumpUpFit): Picture[] {
  const fine = fineUnit();
  const gauge = (p: number): number => gaugeReading(p, context.atmosphericPressure);
  const x = { label: 'Time since the first reading [s]', values: time };
  const put = own.readings.columns.temperature === undefined ? 'read' : 'read, at room temperature';
  return [
    {
      id: 'pump-up',
      title: `The receiver fills in ${plain(time.at(-1)!)} s`,
      x,
      y: { label: `Pressure [${gaugeLabel()}]` },
      lines: [
        { label: put, values: pressure.map(gauge), points: true },
        { label: 'fitted', values: fit.pressures.map(gauge) },
      ],
    },
    {
      id: 'pump-up-residuals',
      title: 'What the curve leaves over: steps of the gauge, without a bend',
      x,
      y: { label: `Read less fitted [${fine.label}]` },
      lines: [
        {
          label: 'read less fitted',
          values: pressure.map((p, i) => fine.of(p - fit.pressures[i]!)),
          points: true,
        },
      ],
    },
  ];
}

export const pumpUpTest = kindOf({
  kind: 'pump-up',
  doc: 'The compressor fills its shut receiver and the gauge is read: its free air delivery.',
  parameters,
  complaints,
  build,
});
