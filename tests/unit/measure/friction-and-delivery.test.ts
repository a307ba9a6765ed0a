/** What coast-down, break-away and pump-up say of the shipped readings, and of faulty ones. */
import { describe, expect, it } from 'vitest';
import type { Estimate } from '../../../src/measure/finding.ts';
import { csv, findingOf } from './sheets.ts';

function expectHolds({ low, high }: Estimate, truth: number): void {
  expect(low).toBeLessThan(truth);
  expect(high).toBeGreaterThan(truth);
}

describe('coast-down of the press', () => {
  const found = findingOf('coast-down.yaml');

  it('holds the friction that the readings were made with, pumping taken out', () => {
    // 0.19 N m of the bearings, 0.06 of the valve gear, some 0.125 of the piston; 2 mN m s.
    const [dry, viscous, fast] = found.estimates as [Estimate, Estimate, Estimate];
    expectHolds(dry, 0.375);
    expectHolds(viscous, 2.6e-3);
    expectHolds(fast, 0.19 + 0.06 + 0.1434 + 2e-3 * 31.9);
    expect(found.scenario).toMatch(/running_torque: 1[789]\d(\.\d)? mN·m/);
    expect(found.warnings).toEqual([]);
  });

  it('finds far more friction when the pumping is left in', () => {
    const without = findingOf('coast-down.yaml', {
      replace: [['valve: open to the room', 'valve: taken off']],
    });
    expect(without.estimates[0]!.value).toBeGreaterThan(2 * found.estimates[0]!.value);
  });

  it('gives no figure below the speed where the friction of rest comes back', () => {
    const slow = csv(
      'time_s,speed_rpm',
      [60, 50, 40, 30, 20, 10].map((speed, i) => [i, speed]),
    );
    const none = findingOf('coast-down.yaml', { files: { 'coast-down.csv': slow } });
    expect(none.usable).toBe(false);
    expect(none.headline).toContain('only 2 of 6 readings lie above 40 rpm');
  });

  it('notices a bend that is neither dry nor viscous', () => {
    // Twice the drag below half speed: something begins to rub.
    const rows = Array.from({ length: 24 }, (_, i) => [i / 2, i < 12 ? 300 - 6 * i : 228 - 13 * (i - 12)]);
    const bent = findingOf('coast-down.yaml', {
      files: { 'coast-down.csv': csv('time_s,speed_rpm', rows) },
      replace: [['valve: open to the room', 'valve: taken off']],
    });
    expect(bent.warnings.join()).toContain('bend otherwise');
  });
});

describe('weights on the rim', () => {
  it('tell bearings from piston by the crank angle', () => {
    const found = findingOf('break-away.yaml');
    const [bearings, piston] = found.estimates as [Estimate, Estimate];
    // 0.32 N m of the bearings with 0.06 of the valve gear, 6 N on the piston.
    expectHolds(bearings, 0.38);
    expectHolds(piston, 6);
  });

  it('come to one torque without angles, and say so', () => {
    const found = findingOf('break-away.yaml', {
      files: {
        'break-away.csv': csv('held_g,moved_g', [
          [230, 240],
          [330, 340],
          [250, 260],
          [310, 320],
        ]),
      },
    });
    expect(found.estimates[0]!.value).toBeCloseTo(9.80665 * 0.161 * 0.285, 3);
    expect(found.statements[0]).toContain('Pistons and bearings are together');
  });

  it('want a lighter weight that held in every row', () => {
    const file = csv('held_g,moved_g', [
      [230, 240],
      [350, 340],
      [250, 260],
    ]);
    expect(() => findingOf('break-away.yaml', { files: { 'break-away.csv': file } })).toThrow(
      'row 2 of break-away.csv: 350 g held, 340 g moved it',
    );
  });
});

describe('pump-up of the shed', () => {
  it('holds the delivery that the readings were made with', () => {
    // 146 L/min falling by 20 up to 8 bar, the air 14 K warmer at the end.
    const [mean, first, last] = findingOf('pump-up.yaml').estimates as [Estimate, Estimate, Estimate];
    expectHolds(mean, 136.5e-3 / 60);
    expectHolds(first, 146e-3 / 60);
    expectHolds(last, 127e-3 / 60);
  });

  it('warns of warm air when the receiver was not read cold', () => {
    const warm = findingOf('pump-up.yaml', { replace: [['  cooled_pressure: 7.40 bar gauge\n', '']] });
    expect(warm.warnings.join()).toMatch(/warm air reads as more.* nearer \d+ L\/min/);
  });

  it('refuses a cold pressure above the last one read', () => {
    expect(() => findingOf('pump-up.yaml', { replace: [['7.40 bar', '7.90 bar']] })).toThrow(
      'between the first and the last reading',
    );
  });
});
