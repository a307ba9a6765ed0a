/**
 * Spin the engine by hand, hose off, and write down how it slows: what rubs alike at every speed, and what grows with it.
 * What pumping air through the open valve costs is reckoned by the model and taken out.
 */
import { choice, quantity, readings } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import type { Values } from '../../kinds/parameter.ts';
import { student95 } from '../../numerics/student.ts';
import { coastDownCautions } from '../cautions.ts';
import { coastFit, pumpingAt, type CoastFit } from '../coast-fit.ts';
import type { Estimate, Finding, Picture } from '../finding.ts';
import { readingError, symmetric } from '../interval.ts';
import { meanInertia, motoringTorques, type MotoringTorques } from '../motoring.ts';
import { stray } from '../straying.ts';
import type { EngineUnderTest, TestContext } from '../test-context.ts';
import { estimateText, plain, rpm, shown, written } from '../words.ts';

const RPM = (2 * Math.PI) / 60;

const parameters = {
  valve: choice(
    ['open to the room', 'taken off'],
    'Whether the engine breathed through its valve gear with the hose off, or the cylinder stood open without it.',
    'open to the room',
  ),
  speed_step: quantity(
    'rotational speed',
    { min: 1e-3 * RPM, max: 100 * RPM },
    '1 rpm',
    'The least change of speed that was read.',
  ),
  readings: readings({
    columns: {
      time: { dimension: 'time', min: 0, max: 1e5, example: 'time_s' },
      speed: { dimension: 'rotational speed', min: 0, max: 20_000 * RPM, example: 'speed_rpm' },
    },
    optionalColumns: {},
    ascending: 'time',
    leastRows: 6,
    mostRows: 5000,
    doc: 'Speed against time, from letting go until it nearly stands.',
    example: 'coast-down.csv',
  }),
};

type Own = Values<typeof parameters>;

function complaints({ readings: { columns } }: Own, { engine }: TestContext): readonly Complaint[] {
  if (engine === undefined)
    return [
      {
        path: [],
        expected: 'an "engine" beside the test: its flywheel says what the slowing means',
        received: 'none',
        hint: 'Write "engine: my-engine.yaml" above "test:", a scenario file in the same folder.',
      },
    ];
  const { speed } = columns;
  if (speed[0]! > speed.at(-1)!) return [];
  const received = `${plain(rpm(speed[0]!))} rpm at first and ${plain(rpm(speed.at(-1)!))} rpm at last`;
  return [{ path: ['readings'], expected: 'a speed that falls', received }];
}

/** Speeds at which pumping is reckoned. */
const SPEEDS = 6;

interface Test {
  readonly own: Own;
  readonly engine: EngineUnderTest;
  readonly time: readonly number[];
  readonly speed: readonly number[];
  readonly left: number;
  readonly speeds: readonly number[];
  readonly motoring: readonly MotoringTorques[];
  readonly inertia: number;
}

/** Below that the friction of rest takes over again (Stribeck), which neither part stands for. */
const slowest = ({ spec }: EngineUnderTest): number => 2 * spec.friction.stribeck_speed;

function build(own: Own, context: TestContext): Finding {
  const { engine } = context;
  if (engine === undefined) throw new Error('a coast-down was let through without an engine');
  const { columns } = own.readings;
  const kept = columns.speed.map((value) => value > slowest(engine));
  const end = kept.indexOf(false) < 0 ? kept.length : kept.indexOf(false);
  const start = columns.time[0]!;
  const time = columns.time.slice(0, end).map((t) => t - start);
  const speed = columns.speed.slice(0, end);
  if (time.length < 6) return tooSlow(own, engine, time.length);
  const [low, high] = [Math.min(...speed), Math.max(...speed)];
  const speeds = Array.from({ length: SPEEDS }, (_, i) => low + ((high - low) * i) / (SPEEDS - 1));
  const room = { pressure: context.atmosphericPressure, temperature: context.atmosphericTemperature };
  const motoring = motoringTorques(engine.spec, room, speeds);
  if (motoring === undefined) return noModel();
  const left = columns.speed.length - end;
  const test: Test = { own, engine, time, speed, left, speeds, motoring, inertia: meanInertia(engine.spec) };
  const fit = coastFit({
    time,
    speed,
    error: readingError(own.speed_step),
    inertia: test.inertia,
    pumping: pumpingOf(test),
  });
  return found(test, fit);
}

const pumpingOf = ({ own, speeds, motoring }: Test) =>
  own.valve === 'taken off' ? [] : speeds.map((speed, i) => ({ speed, torque: motoring[i]!.pumping }));

function estimatesOf({ speed }: Test, { dry, viscous, covariance, fit }: CoastFit): Estimate[] {
  const t = student95(fit.degreesOfFreedom);
  const fast = speed[0]!;
  const [[vd, cross], [, vv]] = covariance;
  const atSpeed = Math.sqrt(vd + 2 * fast * cross + fast ** 2 * vv);
  return [
    { name: 'Dry friction, all of it', value: dry, ...symmetric(dry, t * Math.sqrt(vd)), dimension: 'torque' },
    {
      name: 'Viscous friction, all of it',
      value: viscous,
      ...symmetric(viscous, t * Math.sqrt(vv)),
      dimension: 'torque per speed',
    },
    {
      name: `Both together at ${plain(rpm(fast))} rpm`,
      value: dry + viscous * fast,
      ...symmetric(dry + viscous * fast, t * atSpeed),
      dimension: 'torque',
    },
  ];
}

/** What the scenario ascribes to piston and valve gear, as a torque at rest and a slope with speed (straight line). */
function ascribed({ speeds, motoring }: Test): { readonly dry: number; readonly viscous: number } {
  const torques = motoring.map(({ piston, valveGear }) => piston + valveGear);
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
  const [x, y] = [mean(speeds), mean(torques)];
  const slope =
    mean(speeds.map((value, i) => (value - x) * (torques[i]! - y))) / mean(speeds.map((value) => (value - x) ** 2));
  return { dry: y - slope * x, viscous: Math.max(0, slope) };
}

function found(test: Test, fit: CoastFit): Finding {
  const estimates = estimatesOf(test, fit);
  const [dry, viscous] = estimates as [Estimate, Estimate];
  const others = ascribed(test);
  const pumping = pumpingAt(pumpingOf(test), test.speed[0]!);
  const bearings = { dry: fit.dry - others.dry, viscous: Math.max(0, fit.viscous - others.viscous) };
  return {
    usable: true,
    headline: `Dry friction takes ${estimateText(dry)}, and ${estimateText(viscous)} comes on top with speed.`,
    estimates,
    statements: [
      `Reckoned with a moment of inertia of ${shown(test.inertia, 'moment of inertia')}, the wheel of the scenario and the ` +
        'pistons as far as they go along; friction goes in proportion to it.',
      test.own.valve === 'taken off'
        ? 'The valve gear was off, so no pumping was taken out.'
        : `Pumping air through the open valve takes ${shown(pumping, 'torque')} of it at ${plain(rpm(test.speed[0]!))} rpm by the ` +
          'model, and was taken out.',
      `Piston and valve gear have ${shown(others.dry, 'torque')} of the dry friction by the scenario; the bearings are left with ` +
        `${shown(bearings.dry, 'torque')}.`,
      ...(test.left === 0
        ? []
        : [`The last ${test.left} readings, below ${plain(rpm(slowest(test.engine)))} rpm, were left out: there the friction of rest comes back.`]),
    ],
    warnings: warningsOf(test, fit, viscous, bearings.dry),
    pictures: pictures(test, fit),
    scenario:
      bearings.dry <= 0
        ? ''
        : [
            'friction:',
            `  running_torque: ${written(bearings.dry, 'torque')}`,
            `  viscous_torque: ${written(bearings.viscous, 'torque per speed')}`,
          ].join('\n'),
    next:
      'Hang a weight on the rim for the break-away torque next: a coast-down tells nothing about moving off from rest.',
    cautions: coastDownCautions,
  };
}

function warningsOf(test: Test, { fit, dry: all }: CoastFit, viscous: Estimate, bearings: number): string[] {
  const bend = stray(fit.residuals);
  return [
    ...(bend
      ? [
          'The readings bend otherwise than dry and viscous friction would have it. Look whether something rubs only warm, ' +
            'whether the wheel fans air, or whether the belt was on.',
        ]
      : []),
    ...(viscous.low <= 0
      ? ['The viscous part cannot be told from none; spin it faster, or read more often, to see it.']
      : []),
    ...(bearings <= 0
      ? [
          `The scenario gives piston and valve gear more friction than the whole engine has. Lower piston_force or the drag of ` +
            `the valve gear in ${test.engine.file} until they come to less than ${shown(all, 'torque')}.`,
        ]
      : []),
  ];
}

function pictures(test: Test, fit: CoastFit): Picture[] {
  const { time, speed } = test;
  const x = { label: 'Time since the first reading [s]', values: time };
  const pumping = pumpingOf(test);
  return [
    {
      id: 'coast',
      title: `It slows from ${plain(rpm(speed[0]!))} to ${plain(rpm(speed.at(-1)!))} rpm in ${plain(time.at(-1)!)} s`,
      x,
      y: { label: 'Speed [rpm]' },
      lines: [
        { label: 'read', values: speed.map(rpm), points: true },
        { label: 'fitted', values: fit.speeds.map(rpm) },
      ],
    },
    {
      id: 'coast-residuals',
      title: 'What the law leaves over: no bend should be left',
      x,
      y: { label: 'Read less fitted [rpm]' },
      lines: [{ label: 'read less fitted', values: speed.map((own, i) => rpm(own - fit.speeds[i]!)), points: true }],
    },
    {
      id: 'coast-torques',
      title: 'What slows it, by speed',
      x: { label: 'Speed [rpm]', values: test.speeds.map(rpm) },
      y: { label: 'Torque [N m]' },
      lines: [
        { label: 'dry', values: test.speeds.map(() => fit.dry) },
        { label: 'dry and viscous', values: test.speeds.map((own) => fit.dry + fit.viscous * own) },
        {
          label: 'with pumping',
          values: test.speeds.map((own) => fit.dry + fit.viscous * own + pumpingAt(pumping, own)),
        },
      ],
    },
  ];
}

const nothing: Omit<Finding, 'headline' | 'next'> = {
  usable: false,
  estimates: [],
  statements: [],
  warnings: [],
  pictures: [],
  scenario: '',
  cautions: coastDownCautions,
};

const tooSlow = (own: Own, engine: EngineUnderTest, count: number): Finding => ({
  ...nothing,
  headline: `No figure: only ${count} of ${own.readings.columns.speed.length} readings lie above ${plain(rpm(slowest(engine)))} rpm, where running friction is all there is.`,
  next: 'Spin it faster by hand or with a cord, and read more often.',
});

const noModel = (): Finding => ({
  ...nothing,
  headline: 'No figure: the model gave up on turning this engine over with its chest open.',
  next: 'Take the valve gear off and write "valve: taken off"; then nothing has to be reckoned.',
});

export const coastDownTest = kindOf({
  kind: 'coast-down',
  doc: 'The engine is spun by hand, hose off, and its speed is read as it slows: dry and viscous friction.',
  parameters,
  complaints,
  build,
});
