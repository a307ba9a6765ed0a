/** The response of electric valves limits the speed: the slower they are, the slower the engine runs unloaded. */
import { describe, expect, it } from 'vitest';
import { valveGears } from '../../src/parts/valve-gears/registry.ts';
import { chosen } from '../support/chosen.ts';
import { settledSpeed, systemOf } from '../support/drive.ts';
import { DEGREE, growingLoad, referenceSpec, RPM } from '../support/reference-engine.ts';

/** All times multiplied by a factor; 8 and 6 ms of delay, 4 ms of travel. */
function electricGear(factor: number) {
  const times = {
    opening_delay: 8e-3 * factor,
    closing_delay: 6e-3 * factor,
    travel_time: 4e-3 * factor,
  };
  const angle = (degrees: number) => ({ by: 'angle', angle: degrees * DEGREE });
  return chosen(valveGears, 'electric valves', {
    admission: { sonic_conductance: 4e-8, opens: angle(2), closes: angle(90), ...times },
    exhaust: { sonic_conductance: 6e-8, opens: angle(165), closes: angle(325), ...times },
  });
}

/** Settled speed [rpm], unloaded but for a little windage. */
function speedWith(factor: number): number {
  const spec = referenceSpec({ valve_gear: electricGear(factor), load: growingLoad(0.1, 2e-4) });
  return settledSpeed(systemOf(spec), { angle: 40 * DEGREE, speed: 20, longestTime: 120 }) / RPM;
}

describe('electric valves', () => {
  const speeds = [0.02, 0.5, 1, 2].map(speedWith);

  it('run the engine more slowly the slower they are', () => {
    for (const [i, slower] of speeds.slice(1).entries()) expect(slower).toBeLessThan(0.9 * speeds[i]!);
  });

  it('set the speed by angle: twice the delays, little more than half the speed', () => {
    const [, , usual, slow] = speeds as [number, number, number, number];
    expect(slow / usual).toBeGreaterThan(0.45);
    expect(slow / usual).toBeLessThan(0.75);
  });
});
