/** What a coast-down says, in figures, words and pictures. */
import { square } from '../numerics/elementary/whole-powers.ts';
import { student95 } from '../numerics/student.ts';
import { coastDownCautions } from './cautions.ts';
import { columnUnit } from '../quantity/format.ts';
import { pumpingAt, type CoastFit, type CoastReadings } from './coast-fit.ts';
import type { Estimate, Finding, Picture } from './finding.ts';
import { symmetric } from './interval.ts';
import type { MotoringTorques } from './motoring.ts';
import { stray } from './straying.ts';
import type { EngineUnderTest } from './test-context.ts';
import { estimateText, plain, rpm, shown, written } from './words.ts';

export interface CoastTest {
  /** The cylinder stood open: no pumping. */
  readonly open: boolean;
  readonly engine: EngineUnderTest;
  readonly time: readonly number[];
  readonly speed: readonly number[];
  /** Readings at the end that were too slow. */
  readonly left: number;
  readonly speeds: readonly number[];
  readonly motoring: readonly MotoringTorques[];
  readonly inertia: number;
}

/** Below that the friction of rest takes over again (Stribeck), which neither part stands for. */
export const slowestUseful = ({ spec }: EngineUnderTest): number => 2 * spec.friction.stribeck_speed;

export const pumpingOf = ({ open, speeds, motoring }: CoastTest): CoastReadings['pumping'] =>
  open ? [] : speeds.map((speed, i) => ({ speed, torque: motoring[i]!.pumping }));

function estimatesOf({ speed }: CoastTest, { dry, viscous, covariance, fit }: CoastFit): Estimate[] {
  const t = student95(fit.degreesOfFreedom);
  const fast = speed[0]!;
  const [[vd, cross], [, vv]] = covariance;
  const atSpeed = Math.sqrt(vd + 2 * fast * cross + square(fast) * vv);
  return [
    {
      name: 'Dry friction, all of it',
      value: dry,
      ...symmetric(dry, t * Math.sqrt(vd)),
      dimension: 'torque',
    },
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
function ascribed({ speeds, motoring }: CoastTest): { readonly dry: number; readonly viscous: number } {
  const torques = motoring.map(({ piston, valveGear }) => piston + valveGear);
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
  const [x, y] = [mean(speeds), mean(torques)];
  const slope =
    mean(speeds.map((value, i) => (value - x) * (torques[i]! - y))) /
    mean(speeds.map((value) => square(value - x)));
  return { dry: y - slope * x, viscous: Math.max(0, slope) };
}

export function coastMeasured(test: CoastTest, fit: CoastFit): Finding {
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
      test.open
        ? 'The valve gear was off, so no pumping was taken out.'
        : `Pumping air through the open valve takes ${shown(pumping, 'torque')} of it at ${plain(rpm(test.speed[0]!))} rpm by the ` +
          'model, and was taken out.',
      `Piston and valve gear have ${shown(others.dry, 'torque')} of the dry friction by the scenario; the bearings are left with ` +
        `${shown(bearings.dry, 'torque')}.`,
      ...(test.left === 0
        ? []
        : [
            `The last ${test.left} readings, below ${plain(rpm(slowestUseful(test.engine)))} rpm, were left out: there the friction of rest comes back.`,
          ]),
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
    next: 'Hang a weight on the rim for the break-away torque next: a coast-down tells nothing about moving off from rest.',
    cautions: coastDownCautions,
  };
}

function warningsOf(
  test: CoastTest,
  { fit, dry: all }: CoastFit,
  viscous: Estimate,
  bearings: number,
): string[] {
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

function pictures(test: CoastTest, fit: CoastFit): Picture[] {
  const { time, speed } = test;
  const x = { label: 'Time since the first reading [s]', values: time };
  const pumping = pumpingOf(test);
  const torques = columnUnit('torque');
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
      lines: [
        { label: 'read less fitted', values: speed.map((own, i) => rpm(own - fit.speeds[i]!)), points: true },
      ],
    },
    {
      id: 'coast-torques',
      title: 'What slows it, by speed',
      x: { label: 'Speed [rpm]', values: test.speeds.map(rpm) },
      y: { label: `Torque [${torques.label}]` },
      lines: [
        { label: 'dry', values: test.speeds.map(() => torques.of(fit.dry)) },
        {
          label: 'dry and viscous',
          values: test.speeds.map((own) => torques.of(fit.dry + fit.viscous * own)),
        },
        {
          label: 'with pumping',
          values: test.speeds.map((own) => torques.of(fit.dry + fit.viscous * own + pumpingAt(pumping, own))),
        },
      ],
    },
  ];
}
