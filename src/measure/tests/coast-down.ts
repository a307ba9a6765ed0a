/**
 * Spin the engine by hand, hose off, and write down how it slows: what rubs alike at every speed, and what grows with it.
 * What pumping air through the open valve costs is reckoned by the model and taken out.
 */
import { choice, quantity, readings } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import type { Values } from '../../kinds/parameter.ts';
import { coastDownCautions } from '../cautions.ts';
import { coastMeasured, pumpingOf, slowestUseful, type CoastTest } from '../coast-finding.ts';
import { coastFit } from '../coast-fit.ts';
import type { Finding } from '../finding.ts';
import { readingError } from '../interval.ts';
import { meanInertia, motoringTorques } from '../motoring.ts';
import type { EngineUnderTest, TestContext } from '../test-context.ts';
import { plain, rpm } from '../words.ts';

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

function build(own: Own, context: TestContext): Finding {
  const { engine } = context;
  if (engine === undefined) throw new Error('a coast-down was let through without an engine');
  const { columns } = own.readings;
  const kept = columns.speed.map((value) => value > slowestUseful(engine));
  const end = !kept.includes(false) ? kept.length : kept.indexOf(false);
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
  const open = own.valve === 'taken off';
  const inertia = meanInertia(engine.spec);
  const test: CoastTest = { open, engine, time, speed, left, speeds, motoring, inertia };
  const fit = coastFit({
    time,
    speed,
    error: readingError(own.speed_step),
    inertia,
    pumping: pumpingOf(test),
  });
  return coastMeasured(test, fit);
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
  headline: `No figure: only ${count} of ${own.readings.columns.speed.length} readings lie above ${plain(rpm(slowestUseful(engine)))} rpm, where running friction is all there is.`,
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
