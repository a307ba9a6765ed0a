/** The torque at a held speed, against the engine that settles under it, and the engine without its leaks. */
import { describe, expect, it } from 'vitest';
import { buildEngine } from '../../../src/model/engine.ts';
import { settledRunning } from '../../../src/run/settled-running.ts';
import { torqueCurve, withoutLeaks } from '../../../src/run/torque-curve.ts';
import { expectWithin } from '../../support/expect-within.ts';
import { constantLoad, holeLeak, inertia, referenceSpec } from '../../support/reference-engine.ts';

/** A flywheel that hardly feels the pushes. */
const even = referenceSpec({ flywheel: inertia(3), start: { hand_speed: 20 }, run: { longest_time: 600 } });
const curve = torqueCurve(buildEngine(even));

describe('the curve', () => {
  it('is asked at two radians a second and at each step a third faster, to where nothing is left', () => {
    expect(curve.speed[0]).toBe(2);
    for (const [i, speed] of curve.speed.slice(1).entries())
      expectWithin(speed / curve.speed[i]!, 1.3, 1e-12);
    expect(curve.torque.at(-1)).toBeLessThanOrEqual(0);
    expect(curve.torque.at(-2)).toBeGreaterThan(0);
    expect(curve.airMassFlow).toHaveLength(curve.speed.length);
  });

  it.each([9, 11, 12])(
    'at its speed number %i is the load and the air of the engine that settles there',
    (i) => {
      const { settled } = settledRunning({ ...even, load: constantLoad(curve.torque[i]!) });
      expectWithin(settled!.speed, curve.speed[i]!, 0.01);
      expectWithin(settled!.airMassFlow, curve.airMassFlow[i]!, 0.01);
    },
  );

  it('does not ask about load or flywheel', () => {
    const other = torqueCurve(buildEngine({ ...even, load: constantLoad(40), flywheel: inertia(1) }));
    for (const i of [0, 5, 10]) expectWithin(other.torque[i]!, curve.torque[i]!, 2e-3);
  });

  it('of an engine without air ends at its second speed', () => {
    const { speed, torque } = torqueCurve(
      buildEngine({ ...even, supply: { ...even.supply, pressure: 101_325 } }),
    );
    expect([...speed]).toEqual([2, 2.6]);
    expect(Math.max(...torque)).toBeLessThan(0);
  });
});

describe('an engine without its leaks', () => {
  const engine = buildEngine({ ...even, leaks: [...even.leaks, holeLeak('chest to room', 1e-3)] });
  const without = withoutLeaks(engine);

  it('loses nothing by them, and is otherwise the same', () => {
    for (const [i, { role, passage, ...place }] of without.passages.entries()) {
      const own = engine.passages[i]!;
      expect(place).toEqual({ name: own.name, from: own.from, to: own.to, lag: own.lag });
      if (role !== 'leak') expect(passage).toBe(own.passage);
      else {
        expect(passage.massFlow(1, 5e5, 300, 1e5, 300, 10)).toBe(0);
        expect(passage).not.toHaveProperty('flow');
      }
    }
    expect(without.passages.filter(({ role }) => role === 'leak').length).toBeGreaterThan(1);
  });
});
