/**
 * Run the engine at several pressures or loads and write down what it does: values of the scenario that were only guessed
 * are fitted through the whole model, with how well they are known and whether they can be told apart at all.
 */
import { pureNumber, quantity, readings, settings } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import type { Values } from '../../kinds/parameter.ts';
import { exp } from '../../numerics/elementary/exponential.ts';
import { runningCautions } from '../cautions.ts';
import { engineFit, instruments, type EngineFit, type Observation } from '../engine-fit.ts';
import type { Estimate, Finding, Picture, PictureLine } from '../finding.ts';
import { identifiabilityWarnings } from '../identifiability.ts';
import { halfWidth, relativeInterval } from '../interval.ts';
import type { TestContext } from '../test-context.ts';
import { unknownOf, type Unknown } from '../unknowns.ts';
import { estimateText, gaugeLabel, gaugeReading, gaugeText, plain, rpm } from '../words.ts';

const RPM = (2 * Math.PI) / 60;

const parameters = {
  unknowns: settings({
    most: 5,
    needed: true,
    example: ['leaks.0.clearance', '12 um'],
    doc: 'What is to be found out: values of the scenario by their paths, each with a first guess.',
  }),
  speed_within: quantity(
    'rotational speed',
    { min: 1e-2 * RPM, max: 500 * RPM },
    '4 rpm',
    'How far a reading of the speed may be out, either way (in 19 of 20 cases).',
  ),
  air_flow_within: pureNumber(
    { min: 1e-3, max: 0.5, default: 0.05 },
    '5 %',
    'How far a reading of the air flow may be out, either way.',
  ),
  readings: readings({
    columns: {
      supply_pressure: { dimension: 'pressure', min: 5e4, max: 3.1e6, example: 'supply_pressure_bar_gauge' },
      speed: { dimension: 'rotational speed', min: 1 * RPM, max: 20_000 * RPM, example: 'speed_rpm' },
    },
    optionalColumns: {
      air_flow: { dimension: 'volume flow', min: 1e-7, max: 1, example: 'air_flow_L/min' },
      load_torque: { dimension: 'torque', min: 0, max: 10_000, example: 'load_torque_N_m' },
      exhaust_temperature: {
        dimension: 'temperature',
        min: 150,
        max: 400,
        example: 'exhaust_temperature_degC',
      },
    },
    leastRows: 2,
    mostRows: 40,
    doc: 'One row for each state in which the engine ran steadily; air flow as ANR.',
    example: 'running-log.csv',
  }),
};

type Own = Values<typeof parameters>;

/** Standard error of an exhaust temperature, the model's own doubt about wall heat included (docs/limits.md) [K]. */
const EXHAUST_ERROR = 10;

function complaints(
  { unknowns, readings: { columns, file } }: Own,
  context: TestContext,
): readonly Complaint[] {
  if (context.engine === undefined)
    return [
      {
        path: [],
        expected: 'an "engine" beside the test: the log is read with its model',
        received: 'none',
        hint: 'Write "engine: my-engine.yaml" above "test:", a scenario file in the same folder.',
      },
    ];
  const count =
    columns.speed.length * (1 + Number('air_flow' in columns) + Number('exhaust_temperature' in columns));
  const found: Complaint[] = unknowns
    .filter((own) => unknownOf(own) === undefined)
    .map((own) => ({
      path: ['unknowns', own.path.join('.')],
      expected: 'a first guess, a positive number with its unit',
      received: `"${own.value}"`,
    }));
  if (count <= unknowns.length)
    found.push({
      path: ['readings'],
      expected: `more readings than unknowns, of which there are ${unknowns.length}`,
      received: `${count} in ${file}`,
    });
  const low = columns.supply_pressure.findIndex((p) => p <= context.atmosphericPressure);
  if (low >= 0)
    found.push({
      path: ['readings'],
      expected: 'supply pressures above that of the room',
      received: `${gaugeText(columns.supply_pressure[low]!, context.atmosphericPressure)} in row ${low + 1}`,
    });
  return found;
}

function observationsOf(own: Own, context: TestContext): Observation[] {
  const { columns } = own.readings;
  return columns.speed.map((speed, i): Observation => {
    const airFlow = columns.air_flow?.[i];
    const exhaustTemperature = columns.exhaust_temperature?.[i];
    return {
      conditions: {
        supplyPressure: columns.supply_pressure[i]!,
        loadTorque: columns.load_torque?.[i],
        near: speed,
        room: { pressure: context.atmosphericPressure, temperature: context.atmosphericTemperature },
      },
      changed: [],
      read: {
        speed,
        ...(airFlow === undefined ? {} : { airFlow }),
        ...(exhaustTemperature === undefined ? {} : { exhaustTemperature }),
      },
      errors: {
        speed: own.speed_within / 2,
        airFlow: (own.air_flow_within * (airFlow ?? 1)) / 2,
        exhaustTemperature: EXHAUST_ERROR,
      },
    };
  });
}

function build(own: Own, context: TestContext): Finding {
  const { engine } = context;
  if (engine === undefined) throw new Error('a running log was let through without an engine');
  const unknowns = own.unknowns.flatMap((setting) => unknownOf(setting) ?? []);
  const observations = observationsOf(own, context);
  const fitted = engineFit(engine, unknowns, observations);
  const still = fitted.answers.findIndex((answer) => answer === undefined);
  if (still >= 0) return doesNotRun(still);
  return found(observations, fitted, context);
}

export const unknownEstimate = (
  { path, guess, unit }: Unknown,
  logarithm: number,
  half: number,
): Estimate => {
  const value = guess * exp(logarithm);
  return {
    name: path,
    value,
    ...relativeInterval(value, half),
    dimension: 'number',
    ...(unit === '' ? {} : { suffix: unit.replace(/^u(?=m)/u, 'µ') }),
  };
};

function found(observations: readonly Observation[], fitted: EngineFit, context: TestContext): Finding {
  const { unknowns, fit } = fitted;
  const halves = unknowns.map((_, i) => halfWidth(fit, i));
  const estimates = unknowns.map((own, i) => unknownEstimate(own, fit.parameters[i]!, halves[i]!));
  const warnings = identifiabilityWarnings(unknowns, fit, halves);
  const apart = warnings.length === 0;
  return {
    usable: true,
    headline: `${estimates.map((own) => `${own.name} is ${estimateText(own)}`).join('; ')}.`,
    estimates,
    statements: [
      `Fitted to ${fit.residuals.length} readings in ${observations.length} states, starting from the first guesses ` +
        `${unknowns.map(({ guess, unit }) => `${plain(guess)} ${unit}`.trim()).join(', ')}.`,
      fit.excessScatter > 1.5
        ? `The readings scatter ${plain(fit.excessScatter, 2)} times as much as they were said to; the ranges are widened by that.`
        : 'The readings scatter no more than they were said to.',
      ...(apart ? ['The readings tell these causes apart.'] : []),
      'The ranges hold only what the readings tell; what the model leaves out, or another wrong value of the scenario, comes on top.',
    ],
    warnings: [
      ...warnings,
      ...(fit.converged
        ? []
        : ['The fit was still moving when it was broken off; begin from better guesses.']),
    ],
    pictures: pictures(observations, fitted, context),
    scenario: estimates
      .map(({ name, value, suffix }) => `${name}: ${plain(value, 4)} ${suffix ?? ''}`.trim())
      .join('\n'),
    next: apart
      ? 'Put these values into the scenario, and let the next attempt test them at a pressure or load that is not in this log.'
      : 'Do the bench test that is named above before running again: more rows of the same kind will not tell them apart.',
    cautions: runningCautions,
  };
}

const labels = { speed: 'speed', airFlow: 'air flow', exhaustTemperature: 'exhaust temperature' } as const;

function pictures(
  observations: readonly Observation[],
  { answers }: EngineFit,
  context: TestContext,
): Picture[] {
  const pressures = observations.map(({ conditions }) =>
    gaugeReading(conditions.supplyPressure ?? NaN, context.atmosphericPressure),
  );
  const order = pressures.map((_, i) => i).sort((a, b) => pressures[a]! - pressures[b]!);
  const x = { label: `Supply pressure [${gaugeLabel()}]`, values: order.map((i) => pressures[i]!) };
  const inOrder = (value: (i: number) => number): number[] => order.map(value);
  const residual = instruments.flatMap((name): PictureLine[] =>
    observations.some(({ read }) => read[name] === undefined)
      ? []
      : [
          {
            label: labels[name],
            points: true,
            values: inOrder((i) => {
              const { read, errors } = observations[i]!;
              return (read[name]! - answers[i]![name]) / (2 * errors[name]);
            }),
          },
        ],
  );
  return [
    {
      id: 'log-speed',
      title: 'Speed as it was read, and as the fitted model has it',
      x,
      y: { label: 'Speed [rpm]' },
      lines: [
        { label: 'read', points: true, values: inOrder((i) => rpm(observations[i]!.read.speed!)) },
        { label: 'fitted', values: inOrder((i) => rpm(answers[i]!.speed)) },
      ],
    },
    {
      id: 'log-residuals',
      title:
        'What the model leaves over, as shares of how far each reading may be out: within one, without a slope',
      x,
      y: { label: 'Read less fitted, shares' },
      lines: residual,
    },
  ];
}

const doesNotRun = (row: number): Finding => ({
  usable: false,
  headline: `No figure: with these first guesses the model does not run in the state of row ${row + 1}, where the engine did.`,
  estimates: [],
  statements: [],
  warnings: [],
  pictures: [],
  scenario: '',
  next: 'Guess less friction, smaller leaks or a larger discharge coefficient to begin with, or look whether the scenario has the load that was on.',
  cautions: runningCautions,
});

export const runningLogTest = kindOf({
  kind: 'running log',
  doc: 'The engine runs at several pressures or loads: guessed values of the scenario are fitted to what it does.',
  parameters,
  complaints,
  build,
});
