/** What every valve gear owes the model: areas and gaps as functions of the crank angle that change only at its edges. */
import type { Passage, Port } from '../../src/parts/passage.ts';
import type { GearPressures, ValveGear } from '../../src/parts/valve-gears/valve-gear.ts';
import { mirrored } from '../../src/parts/valve-gears/mirrored.ts';
import { about, evenly, isSmooth, repeated, unless } from './complaints.ts';
import { passageComplaints } from './contract-of-passages.ts';

const TURN = 2 * Math.PI;
const NEAR = 1e-6;
const HAIR = 1e-9;

/** Crank speed [rad/s]: at rest, because what works by the clock moves its edges with the speed. */
const SPEED = 0;

/** Of the largest value: what rounding leaves of a shut port, and what tabulating adds to a smooth law. */
const ROUNDING = 1e-12;
const TABULATION = 1e-5;

/** Intervals between neighbouring edges, round the turn. */
function stretches(edges: readonly number[]): (readonly [number, number])[] {
  return edges.map((edge, i) => [edge, edges[i + 1] ?? edges[0]! + TURN] as const);
}

const inside = ([a, b]: readonly [number, number], points: number): number[] =>
  evenly(a + 0.02 * (b - a), b - 0.02 * (b - a), points);

function edgeComplaints({ edges, events }: ValveGear): string[] {
  const distance = (a: number, b: number): number => Math.abs(((a - b + 3 * Math.PI) % TURN) - Math.PI);
  return [
    ...unless(edges.length > 0 && edges.every((edge) => edge >= 0 && edge < TURN), 'edges outside one turn'),
    ...unless(
      edges.slice(1).every((edge, i) => edge > edges[i]!),
      'edges not ascending, or one twice',
    ),
    ...Object.entries(events as unknown as Record<string, number>).flatMap(([name, angle]) => [
      ...unless(angle >= 0 && angle < TURN, `${name} outside one turn`),
      ...unless(
        edges.some((edge) => distance(edge, angle) < NEAR),
        `${name} is not among the edges`,
      ),
    ]),
  ];
}

/** Away from edges a law of the crank angle is smooth, and it is the same every turn. */
function lawComplaints(law: (angle: number) => number, edges: readonly number[], what: string): string[] {
  const most = Math.max(...evenly(0, TURN, 720).map((angle) => Math.abs(law(angle))));
  const sameEveryTurn = evenly(0.01, TURN + 0.01, 97).every((angle) =>
    [-3, -1, 1, 40].every((turns) => Math.abs(law(angle + turns * TURN) - law(angle)) <= 1e-9 * most),
  );
  // Seen through a cosine, what begins like a power 1.5 of the distance from an edge is smooth up to the edge.
  const smooth = stretches(edges)
    .filter(([a, b]) => b - a > 1e-3)
    .every(([a, b]) => {
      // At an edge itself the law may already be that of the next stretch.
      const through = (u: number): number =>
        law(a + HAIR + ((b - a - 2 * HAIR) * (1 - Math.cos(Math.PI * u))) / 2);
      // What looks like a kink may be a steep stretch seen too coarsely.
      return [144, 1536].some((points) => isSmooth(through, 0, 1, points, TABULATION * most));
    });
  return [
    ...unless(sameEveryTurn, `${what} differs from turn to turn`),
    ...unless(smooth, `${what} kinks or jumps between edges`),
  ];
}

/** How long after opening and before closing the port is looked at [rad]. */
const JUST = 2e-3;

function timingComplaints(own: Port, { events }: ValveGear): string[] {
  const [opens, closes] =
    own.role === 'admission' ? [events.admission, events.cutOff] : [events.release, events.compression];
  const shut = [opens - JUST, closes + JUST].every((angle) => own.effectiveArea(angle, SPEED) < 1e-15);
  const open = [opens + JUST, closes - JUST].every((angle) => own.effectiveArea(angle, SPEED) > 0);
  return unless(shut && open, 'does not open and shut at its events');
}

function portComplaints(port: Port, gear: ValveGear): string[] {
  const effectiveArea = (angle: number): number => port.effectiveArea(angle, SPEED);
  const areas = evenly(-TURN, TURN, 2880).map(effectiveArea);
  const most = Math.max(...areas);
  const opensBetween = stretches(gear.edges).filter((stretch) => {
    const open = inside(stretch, 12).map((angle) => effectiveArea(angle) > ROUNDING * most);
    return open.includes(true) && open.includes(false);
  });
  return about(port.name, [
    ...unless(
      areas.every((area) => Number.isFinite(area) && area >= -ROUNDING * most),
      'area not finite or below zero',
    ),
    ...unless(most > 0 && Math.min(...areas) <= ROUNDING * most, 'never opens or never shuts'),
    ...unless(opensBetween.length === 0, 'opens or shuts where there is no edge'),
    ...timingComplaints(port, gear),
    ...lawComplaints(effectiveArea, gear.edges, 'area'),
  ]);
}

function gapComplaints(passage: Passage, gear: ValveGear): string[] {
  // A small pressure difference: what a gap passes when it chokes kinks with the pressure, wherever the crank is.
  const leak = (angle: number): number => passage.massFlow(angle, 1.02e5, 288.15, 1e5, 288.15, SPEED);
  return [
    ...about(passage.name, [
      ...unless(passage.role === 'leak', 'is not called a leak'),
      ...lawComplaints(leak, gear.edges, 'leak'),
    ]),
    ...passageComplaints(passage, [0.3, ...Object.values(gear.events as unknown as Record<string, number>)]),
  ];
}

const ROOM = 101_325;

/** Pressures that press a gear together and such that part it. */
const loadings: readonly GearPressures[] = [
  { chest: ROOM, cylinder: ROOM, otherEnd: ROOM },
  { chest: 5e5, cylinder: ROOM, otherEnd: ROOM },
  { chest: 5e5, cylinder: 5e5, otherEnd: ROOM },
  { chest: ROOM, cylinder: 30e5, otherEnd: 2e5 },
  { chest: 30e5, cylinder: 5e3, otherEnd: 30e5 },
];

function dragComplaints(gear: ValveGear): string[] {
  const torques = evenly(0, TURN, 36).flatMap((angle) =>
    loadings.flatMap((pressures) =>
      [0, 1e-6, 0.1, 3, 30, 300, 2000].map((speed) => gear.dragTorque(angle, speed, pressures)),
    ),
  );
  const { steadyDrag } = gear;
  const pulls = loadings.map((pressures) => (angle: number) => gear.dragTorque(angle, SPEED, pressures));
  return [
    ...unless(
      torques.every((torque) => Number.isFinite(torque) && torque >= 0),
      'drag torque not finite or below zero',
    ),
    ...unless(
      steadyDrag === undefined || torques.every((torque) => torque === steadyDrag),
      'drag torque is not always what its number says',
    ),
    ...new Set(pulls.flatMap((pull) => lawComplaints(pull, gear.edges, 'drag torque'))),
  ];
}

/** The gear, and what it is in an engine that runs the other way. */
export const valveGearComplaints = (gear: ValveGear): string[] => [
  ...oneWayComplaints(gear),
  ...about('in reverse', oneWayComplaints(gear.reverse?.gear() ?? mirrored(gear))),
];

function oneWayComplaints(gear: ValveGear): string[] {
  const roles = gear.ports.map(({ role }) => role).sort();
  const names = [...gear.ports, ...gear.sealingGaps].map(({ name }) => name);
  const sizes = gear.derivedSizes;
  return [
    ...unless(roles.join() === 'admission,exhaust', 'does not have one admission and one exhaust port'),
    ...repeated(names).map((name) => `two passages are called "${name}"`),
    ...unless(
      sizes.every(({ label, value }) => label !== '' && Number.isFinite(value)),
      'a derived size without label or value',
    ),
    ...repeated(sizes.map(({ label }) => label)).map((label) => `two sizes are called "${label}"`),
    ...edgeComplaints(gear),
    ...dragComplaints(gear),
    ...gear.ports.flatMap((port) => portComplaints(port, gear)),
    ...gear.sealingGaps.flatMap((passage) => gapComplaints(passage, gear)),
  ];
}
