/** From where an engine starts, and the slowest push that catches, each tried out by itself. */
import { describe, expect, it } from 'vitest';
import { buildEngine } from '../../../src/model/engine.ts';
import { initialState } from '../../../src/model/initial-state.ts';
import { SLOT } from '../../../src/model/slots.ts';
import { engineSystem } from '../../../src/model/system.ts';
import { motionFrom, nextMilestone } from '../../../src/run/motion.ts';
import { startMap, unaidedShare } from '../../../src/run/start-map.ts';
import { engineStepper, QUICK } from '../../../src/run/stepper.ts';
import { expectWithin } from '../../support/expect-within.ts';
import { constantLoad, referenceSpec } from '../../support/reference-engine.ts';

const SETTLED = 40;
const LOAD = 1.5;
const engine = buildEngine(referenceSpec({ load: constantLoad(LOAD) }));
const system = engineSystem(engine);

/** 3 N m at any speed: half of it to spare. */
const curve = {
  speed: Float64Array.of(2, 1000),
  torque: Float64Array.of(2 * LOAD, 2 * LOAD),
  airMassFlow: new Float64Array(2),
};
const map = startMap({ engine, settledSpeed: SETTLED, curve }, 8);

/** Lets the flywheel go at a speed, the air having been on for three seconds: whether it has caught, and how fast when. */
function letGo(angle: number, speed: number, airFirst: boolean, settled = SETTLED) {
  const stepper = engineStepper(system, QUICK);
  const y = initialState(system, angle, 0);
  if (airFirst) stepper.inTime(0, y, 3, { stepLimit: 10_000 });
  y[SLOT.speed] = speed;
  const since = y[SLOT.time]!;
  const motion = motionFrom({ system, stepper, y, longestTime: since + 30 });
  let last = Infinity;
  for (let turns = 0; turns < 12; turns += 1) {
    if (nextMilestone(motion).kind !== 'turn') return undefined;
    const reached = y[SLOT.speed]!;
    if (reached > last || reached > 0.8 * settled) return { speed: reached, time: y[SLOT.time]! - since };
    last = reached;
  }
  return undefined;
}

/** To nine tenths of the settled speed, the rest of the way by the surplus of the curve. */
const secondsFrom = ({ speed, time }: { readonly speed: number; readonly time: number }): number =>
  time + Math.max(0, (engine.flywheel.momentOfInertia * (0.9 * SETTLED - speed)) / LOAD);

describe('the start map', () => {
  it('goes evenly round the turn', () => {
    expect(map.positions.map(({ crankAngle }) => crankAngle / (2 * Math.PI))).toEqual(
      Array.from({ length: 8 }, (_, i) => i / 8),
    );
  });

  it('knows where it starts with the air turned on, and how soon it is up to speed', () => {
    let unaided = 0;
    for (const { crankAngle, startsUnaided, push, secondsToSpeed } of map.positions) {
      const start = letGo(crankAngle, 0, false);
      expect(startsUnaided).toBe(start !== undefined);
      if (!start) continue;
      unaided += 1;
      expect(push).toBe(0);
      expectWithin(secondsToSpeed!, secondsFrom(start), 0.02);
    }
    expect(unaided).toBeGreaterThan(0);
    expect(unaided).toBeLessThan(8);
    expect(map.unaidedShare).toBe(unaided / 8);
    expect(unaidedShare(engine, SETTLED, 8)).toBe(unaided / 8);
  });

  it('knows the slowest push that catches, to a tenth of a radian a second, and how soon it is up to speed', () => {
    const pushed = map.positions.filter(({ startsUnaided }) => !startsUnaided);
    for (const { crankAngle, push, secondsToSpeed } of pushed) {
      const closeness = Math.max(0.1, 0.02 * push!);
      const enough = letGo(crankAngle, push! * 1.005, true);
      expect(enough).toBeDefined();
      expect(letGo(crankAngle, push! * 0.995 - closeness, true)).toBeUndefined();
      expectWithin(secondsToSpeed!, secondsFrom(letGo(crankAngle, push!, true) ?? enough!), 0.05);
    }
  });

  it('tries no push faster than the settled speed', () => {
    const most = Math.max(...map.positions.map(({ push }) => push!));
    const slow = startMap({ engine, settledSpeed: 0.7 * most, curve }, 8);
    for (const { push } of slow.positions) expect(push ?? 0).toBeLessThanOrEqual(0.7 * most);
    // What is faster than nine tenths of it at its first turn is up to speed then.
    const atOnce = slow.positions.flatMap(({ crankAngle, push, secondsToSpeed }) => {
      const start = push === 0 ? letGo(crankAngle, 0, false, 0.7 * most) : undefined;
      return start && start.speed > 0.9 * 0.7 * most ? [secondsToSpeed! / start.time] : [];
    });
    expect(atOnce.length).toBeGreaterThan(0);
    for (const ratio of atOnce) expectWithin(ratio, 1, 0.02);
    const hopeless = slow.positions.filter(({ push }) => push === undefined);
    expect(hopeless.length).toBeGreaterThan(0);
    for (const { startsUnaided, secondsToSpeed } of hopeless) {
      expect(startsUnaided).toBe(false);
      expect(secondsToSpeed).toBeUndefined();
    }
  });
});
