/**
 * A weight on a cord round the rim: what just does not move the engine from rest, and what just does.
 *
 *   τ = g m r, between g m_held r and g m_moved r; the pistons' own weight added where they go down
 *
 * With the crank angle of each reading the force that holds the pistons comes out too: τ(θ) = τ_bearings + F·|dx/dθ|, for
 * at a dead centre a piston has no lever. Both by a straight line through the middles (least squares).
 */
import { quantity, readings } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import type { Values } from '../../kinds/parameter.ts';
import { buildEngine } from '../../model/engine.ts';
import { initialState } from '../../model/initial-state.ts';
import { engineSystem } from '../../model/system.ts';
import { cos, sin } from '../../numerics/elementary/trigonometric.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';
import { crankOffset } from '../../parts/cylinder.ts';
import { pistonTravelRate } from '../../parts/crank-train.ts';
import { partContext, type EngineSpec } from '../../parts/engine-description.ts';
import { leastSquares } from '../../numerics/least-squares.ts';
import { student95 } from '../../numerics/student.ts';
import { breakAwayCautions } from '../cautions.ts';
import type { Estimate, Finding, Picture } from '../finding.ts';
import { halfWidth, symmetric } from '../interval.ts';
import type { TestContext } from '../test-context.ts';
import { columnUnit } from '../../quantity/format.ts';
import { estimateText, plain, shown, written } from '../words.ts';

const GRAVITY = 9.80665;

const parameters = {
  lever: quantity(
    'length',
    { min: 1e-3, max: 3 },
    '161 mm',
    'From the middle of the shaft to the middle of the cord: radius of the rim and half the cord.',
  ),
  readings: readings({
    columns: {
      held: { dimension: 'mass', min: 0, max: 1000, example: 'held_g' },
      moved: { dimension: 'mass', min: 1e-4, max: 1000, example: 'moved_g' },
    },
    optionalColumns: {
      crank_angle: { dimension: 'angle', min: -4 * Math.PI, max: 4 * Math.PI, example: 'crank_angle_deg' },
    },
    leastRows: 3,
    mostRows: 200,
    doc: 'The heaviest weight that did not move it and the lightest that did, pan included, at several places of the turn.',
    example: 'break-away.csv',
  }),
};

type Own = Values<typeof parameters>;

const complaints = ({ readings: { columns, file } }: Own): readonly Complaint[] => {
  const wrong = columns.held.findIndex((held, i) => held >= columns.moved[i]!);
  if (wrong < 0) return [];
  return [
    {
      path: ['readings'],
      expected: 'in every row a lighter weight that held and a heavier one that moved it',
      received: `row ${wrong + 1} of ${file}: ${plain(columns.held[wrong]! * 1e3)} g held, ${plain(columns.moved[wrong]! * 1e3)} g moved it`,
    },
  ];
};

interface Pull {
  /** Torque in the middle between held and moved [N m], the pistons' weight included. */
  readonly torque: number;
  /** Half of what lies between. */
  readonly half: number;
  /** Crank angle [rad] and the lever that all pistons have there together [m], if known. */
  readonly angle?: number;
  readonly lever?: number;
}

function pullsOf({ lever, readings: { columns } }: Own, { engine }: TestContext): Pull[] {
  const angles = engine === undefined ? undefined : columns.crank_angle;
  return columns.held.map((held, i): Pull => {
    const moved = columns.moved[i]!;
    const torque = (GRAVITY * lever * (held + moved)) / 2;
    const half = (GRAVITY * lever * (moved - held)) / 2;
    const angle = angles?.[i];
    if (angle === undefined || engine === undefined) return { torque, half };
    const { spec } = engine;
    return { torque: torque + weightTorque(spec, angle), half, angle, lever: pistonLever(spec, angle) };
  });
}

/** Of the pistons' weight [N m], positive when it helps the engine forward. */
function weightTorque(spec: EngineSpec, angle: number): number {
  const system = engineSystem(buildEngine(spec));
  return system.observe(initialState(system, angle, 0)).gravityTorque;
}

function pistonLever(spec: EngineSpec, angle: number): number {
  const { cylinder, running_direction } = spec;
  const { crank } = partContext(spec);
  return Array.from({ length: cylinder.cylinders }, (_, i) => {
    const own = angle - crankOffset(cylinder, i, running_direction);
    return Math.abs(pistonTravelRate(crank, sin(own), cos(own)));
  }).reduce((a, b) => a + b, 0);
}

/** At least so much difference between the largest and the smallest lever, as a share, for telling piston from bearings. */
const LEVERS_APART = 0.5;

function build(own: Own, context: TestContext): Finding {
  const pulls = pullsOf(own, context);
  const levers = pulls.flatMap(({ lever }) => lever ?? []);
  const [least, most] = [Math.min(...levers), Math.max(...levers)];
  const separate = levers.length >= 4 && most - least > LEVERS_APART * most;
  return separate ? separated(pulls, context) : together(pulls);
}

const hardest = (pulls: readonly Pull[]): Pull => pulls.reduce((a, b) => (b.torque > a.torque ? b : a));

function together(pulls: readonly Pull[]): Finding {
  const n = pulls.length;
  const mean = pulls.reduce((sum, { torque }) => sum + torque, 0) / n;
  const scatter = pulls.reduce((sum, { torque }) => sum + square(torque - mean), 0) / (n - 1);
  const bracket = pulls.reduce((sum, { half }) => sum + square(half) / 3, 0) / n;
  const half = student95(n - 1) * Math.sqrt(Math.max(scatter, bracket) / n);
  const whole: Estimate = {
    name: 'Break-away torque, mean',
    value: mean,
    ...symmetric(mean, half),
    dimension: 'torque',
  };
  const worst = hardest(pulls).torque;
  return {
    usable: true,
    headline: `It breaks away at ${estimateText(whole)}; the stiffest place took ${shown(worst, 'torque')}.`,
    estimates: [whole, { ...oneOf('Stiffest place', hardest(pulls)) }],
    statements: [
      'Pistons and bearings are together in this figure: no crank angles were read, or too few, or no engine is named.',
    ],
    warnings: [
      'The scenario keeps the piston force apart from the break-away torque. If it already gives one, take its share off first.',
    ],
    pictures: [pullPicture(pulls, [])],
    scenario: `friction:\n  breakaway_torque: ${written(mean, 'torque')}`,
    next: 'Read the crank angle with each weight, at the dead centres and in mid-stroke, to tell the pistons from the bearings.',
    cautions: breakAwayCautions,
  };
}

const oneOf = (name: string, { torque, half }: Pull): Estimate => ({
  name,
  value: torque,
  ...symmetric(torque, half),
  dimension: 'torque',
});

function separated(pulls: readonly Pull[], { engine }: TestContext): Finding {
  const longest = Math.max(...pulls.map(({ lever }) => lever ?? 0));
  const unit = hardest(pulls).torque;
  const law = (p: readonly number[], lever: number): number => unit * (p[0]! + (p[1]! * lever) / longest);
  const fit = leastSquares({
    start: [0.5, 0.5],
    residuals: (p) =>
      pulls.map(({ torque, half, lever }) => (law(p, lever ?? 0) - torque) / (half / Math.sqrt(3))),
  });
  const [bearings, atLongest] = fit.parameters.map((value) => value * unit) as [number, number];
  const estimates: Estimate[] = [
    {
      name: 'Break-away torque of bearings and valve gear',
      value: bearings,
      ...symmetric(bearings, halfWidth(fit, 0) * unit),
      dimension: 'torque',
    },
    {
      name: 'Force that holds the pistons, all together',
      value: atLongest / longest,
      ...symmetric(atLongest / longest, (halfWidth(fit, 1) * unit) / longest),
      dimension: 'force',
    },
    oneOf('Stiffest place', hardest(pulls)),
  ];
  const [torque, force] = estimates as [Estimate, Estimate];
  const cylinders = engine?.spec.cylinder.cylinders ?? 1;
  const gear = gearDrag(engine?.spec);
  return {
    usable: true,
    headline: `Bearings and valve gear break away at ${estimateText(torque)}, the pistons at ${estimateText(force)}.`,
    estimates,
    statements: [
      'The pistons have no lever at a dead centre and most in mid-stroke; that is how the two are told apart.',
      ...(gear > 0 ? [`Of the torque ${shown(gear, 'torque')} is the valve gear's by the scenario.`] : []),
    ],
    warnings: [
      ...(force.low <= 0
        ? ['The force on the pistons cannot be told from none: weigh at more places near mid-stroke.']
        : []),
      ...(torque.low <= 0
        ? ['The torque of the bearings cannot be told from none: weigh at both dead centres.']
        : []),
    ],
    pictures: [
      pullPicture(
        pulls,
        fit.parameters.length === 2 ? pulls.map(({ lever }) => law(fit.parameters, lever ?? 0)) : [],
      ),
    ],
    scenario: [
      'friction:',
      `  breakaway_torque: ${written(Math.max(0, bearings - gear), 'torque')}`,
      `  piston_force: ${written(Math.max(0, force.value / cylinders), 'force')}`,
    ].join('\n'),
    next: 'Spin it and let it coast for the running friction: break-away torque alone makes no engine slow.',
    cautions: breakAwayCautions,
  };
}

/** What the scenario ascribes to the valve gear at rest [N m]. */
function gearDrag(spec: EngineSpec | undefined): number {
  if (spec === undefined) return 0;
  const system = engineSystem(buildEngine(spec));
  return system.observe(initialState(system, 0, 0)).gearTorque;
}

function pullPicture(pulls: readonly Pull[], fitted: readonly number[]): Picture {
  const angles = pulls.map(({ angle }, i) => (angle === undefined ? i + 1 : (angle * 180) / Math.PI));
  const order = angles.map((_, i) => i).sort((a, b) => angles[a]! - angles[b]!);
  const torques = columnUnit('torque');
  const inOrder = (values: readonly number[]): number[] => order.map((i) => torques.of(values[i]!));
  const known = pulls[0]?.angle !== undefined;
  return {
    id: 'break-away',
    title: 'Weights that held and weights that moved it, as torques',
    x: { label: known ? 'Crank angle [°]' : 'Reading', values: order.map((i) => angles[i]!), whole: !known },
    y: { label: `Torque [${torques.label}]` },
    lines: [
      { label: 'held', values: inOrder(pulls.map(({ torque, half }) => torque - half)), points: true },
      { label: 'moved', values: inOrder(pulls.map(({ torque, half }) => torque + half)), points: true },
      ...(fitted.length === 0 ? [] : [{ label: 'fitted', values: inOrder(fitted) }]),
    ],
  };
}

export const breakAwayTest = kindOf({
  kind: 'break-away',
  doc: 'A weight on a cord round the rim: torque that just moves the engine from rest.',
  parameters,
  complaints,
  build,
});
