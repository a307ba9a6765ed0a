/** When readings cannot tell causes apart, and what is said then. */
import { describe, expect, it } from 'vitest';
import { identifiabilityWarnings } from '../../../src/measure/identifiability.ts';
import { halfWidth } from '../../../src/measure/interval.ts';
import { directTest, settingsAt, unknownOf, type Unknown } from '../../../src/measure/unknowns.ts';
import { leastSquares } from '../../../src/numerics/least-squares.ts';

const at = { file: 'sheet.yaml', line: 1, column: 1 };
const unknown = (path: string, value: string): Unknown => {
  const own = unknownOf({ path: path.split('.'), value, at });
  if (own === undefined) throw new Error(`${value} is no first guess`);
  return own;
};
const three = [
  unknown('leaks.0.clearance', '12 um'),
  unknown('friction.running_torque', '0.12 N m'),
  unknown('valve_gear.discharge_coefficient', '0.65'),
];

/** Warnings for readings that have these slopes for the unknowns, each read to 1. */
function warningsFor(unknowns: readonly Unknown[], slopes: readonly (readonly number[])[]): string[] {
  const fit = leastSquares({
    start: unknowns.map(() => 0),
    residuals: (p) => slopes.map((row) => row.reduce((sum, own, i) => sum + own * p[i]!, 0)),
  });
  return identifiabilityWarnings(
    unknowns,
    fit,
    unknowns.map((_, i) => halfWidth(fit, i)),
  );
}

describe('readings of which each speaks of one cause', () => {
  it('raise no doubt', () => {
    expect(
      warningsFor(three, [
        [20, 1, 0],
        [0, 30, 2],
        [1, 0, 25],
        [10, 10, 10],
        [0, 5, 9],
      ]),
    ).toEqual([]);
  });
});

describe('two causes that do the same', () => {
  it('are named, with the way they trade and the test that tells', () => {
    const [first] = warningsFor(three.slice(0, 2), [
      [20, 20],
      [30, 30.5],
      [25, 25.1],
      [10, 10.1],
    ]);
    expect(first).toBe(
      'These readings cannot tell leaks.0.clearance from friction.running_torque: more of one with less of the other fits ' +
        'as well (correlation −1). Believe what they do together, not either figure. A bench test of kind “pressure decay” ' +
        'measures leaks.0.clearance by itself.',
    );
  });
});

describe('three causes of which any two can be told apart, but not all three', () => {
  it('are told as a trade between them', () => {
    const rows = [
      [100, 0, 50],
      [0, 100, 50],
      [60, 40, 50.6],
      [20, 80, 50],
      [70, 30, 49.5],
    ];
    const warnings = warningsFor(three, rows);
    expect(warnings.join(' ')).toMatch(/hardly tell the causes apart|cannot tell/);
  });
});

it('says which value the readings say nothing about', () => {
  const warnings = warningsFor(three.slice(0, 2), [
    [20, 0.01],
    [25, 0.02],
    [30, 0.01],
    [22, 0.015],
  ]);
  expect(warnings.join()).toContain(
    'say next to nothing about friction.running_torque. A bench test of kind “coast-down” measures friction.running_torque by itself.',
  );
});

describe('an unknown', () => {
  it('is varied in the unit it was written with', () => {
    const [first, , third] = settingsAt(three, [Math.log(2), 0, Math.log(0.9)]);
    expect(first?.value).toBe('24 um');
    expect(third?.value).toBe('0.585');
  });

  it.each(['H7/g6', '12 H7/g6', 'reamed / turned', '-3 um', '0 N m', 'open'])('is not %s', (value) => {
    expect(unknownOf({ path: ['x'], value, at })).toBeUndefined();
  });

  it.each([
    ['valve_gear.admission.clearance', 'pressure decay'],
    ['valve_gear.face_gap', 'pressure decay'],
    ['friction.viscous_torque', 'coast-down'],
    ['friction.breakaway_torque', 'break-away'],
    ['compressor.free_air_delivery', 'pump-up'],
    ['valve_gear.discharge_coefficient', undefined],
  ])('%s has the bench test %s', (path, test) => {
    expect(directTest({ path })).toBe(test);
  });
});
