/** What every passage owes the system: flow that is odd in the pressure difference, monotone, continuous, zero at rest. */
import type { Passage } from '../../src/parts/passage.ts';
import { about, byRatio, isContinuous, unless } from './complaints.ts';

const T = 288.15;
const WARM = 350;
const ROOM = 101_325;

/** Crank speed [rad/s]. */
const SPEED = 20;

/** Pressures [Pa] from a deep vacuum to the highest supply, equal pressures among the pairs. */
const pressures = [5e3, ROOM, 1.02e5, 2e5, 1e6, 3e6];

type Flow = (pFrom: number, pTo: number) => number;

function oddness(passage: Passage, angle: number): string[] {
  const bad = pressures.flatMap((p1) =>
    pressures.filter((p2) => {
      const there = passage.massFlow(angle, p1, WARM, p2, T, SPEED);
      const back = passage.massFlow(angle, p2, T, p1, WARM, SPEED);
      return there + back !== 0;
    }),
  );
  return unless(bad.length === 0, 'flow is not odd in the pressure difference');
}

/** Rounding of a value that should not fall. */
const neverFalls = (values: readonly number[]): boolean =>
  values.slice(1).every((value, i) => value >= values[i]! - 1e-12 * Math.abs(values[i]!));

function shape(flow: Flow): string[] {
  const ladder = byRatio(0.02, 50, 160).map((ratio) => ratio * ROOM);
  const rising = ladder.map((p) => flow(p, ROOM));
  const falling = ladder.map((p) => -flow(ROOM, p));
  const logRatio = Math.log(50);
  return [
    ...unless([...rising, ...falling].every(Number.isFinite), 'flow is not finite'),
    ...unless(
      rising.every((q, i) => (ladder[i]! >= ROOM ? q >= 0 : q <= 0)),
      'flow runs uphill',
    ),
    ...unless(neverFalls(rising), 'flow falls with growing upstream pressure'),
    ...unless(neverFalls(falling), 'flow grows with growing pressure behind it'),
    ...unless(
      isContinuous((x) => flow(Math.exp(x) * ROOM, ROOM), -logRatio, logRatio, 400),
      'flow jumps',
    ),
    ...unless(
      isContinuous((x) => flow(ROOM + x, ROOM), -50, 50, 40),
      'flow jumps at equal pressures',
    ),
  ];
}

function ends({ name, from, to }: Passage): string[] {
  return [
    ...unless(name.trim() !== '', 'has no name'),
    ...unless((from as string) !== to, 'leads to where it begins'),
    ...unless(from !== 'atmosphere' && to !== 'supply', 'is named against the usual direction of the flow'),
  ];
}

/** A passage at some crank angles. */
export function passageComplaints(passage: Passage, angles: readonly number[]): string[] {
  const flows = angles.flatMap((angle) => [
    ...oddness(passage, angle),
    ...unless(
      pressures.every((p) => passage.massFlow(angle, p, T, p, WARM, SPEED) === 0),
      'air flows between equal pressures',
    ),
    ...shape((pFrom, pTo) => passage.massFlow(angle, pFrom, T, pTo, T, SPEED)),
  ]);
  return about(passage.name, [...ends(passage), ...flows]);
}
