/**
 * Fluctuation of speed of a settled engine against the turning-moment diagram: with E the integral of the torque left
 * over, (E_max − E_min) = J ω̄² C, where ω̄ is half-way between the extremes. And C goes as 1/J.
 */
import { describe, expect, it } from 'vitest';
import { angleAtStrokeFraction } from '../../src/parts/crank-train.ts';
import { givenFlywheel } from '../../src/parts/flywheels/given.ts';
import { proportionalLoad } from '../../src/parts/loads/proportional.ts';
import type { SettledCycle } from '../../src/run/result.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { expectWithin } from '../support/expect-within.ts';
import { idealEngine, idealGear, plainHose } from '../support/ideal-engine.ts';

const RPM = (2 * Math.PI) / 60;

function settledWith(momentOfInertia: number): SettledCycle {
  const { settled } = runEngine(
    idealEngine({
      cylinder: { clearance: 0.1 },
      supply: { pressure: 4e5, hose: plainHose(0.01, 2), chest_volume: 5e-4 },
      flywheel: givenFlywheel.choose({ moment_of_inertia: momentOfInertia }),
      load: proportionalLoad.choose({ torque: 3, at_speed: 300 * RPM }),
      valve_gear: idealGear({
        area: () => 40e-6,
        admission: { opens: 0, closes: angleAtStrokeFraction({ crankRadius: 0.03, rodLength: 0.12 }, 0.4) },
        exhaust: { opens: Math.PI, closes: 6 },
      }),
      start: { crank_angle: 0.5, hand_speed: 250 * RPM },
    }),
  );
  return settled!;
}

/** Swing of the energy in the flywheel [J] from the torques at every degree, by the trapezoidal rule. */
function energySwing({ profile }: SettledCycle): number {
  const left = profile.gasTorque.map((gas, i) => gas - profile.frictionTorque[i]! - profile.loadTorque[i]!);
  let [energy, low, high] = [0, 0, 0];
  for (let i = 1; i < left.length; i += 1) {
    energy += ((left[i - 1]! + left[i]!) / 2) * (Math.PI / 180);
    [low, high] = [Math.min(low, energy), Math.max(high, energy)];
  }
  // A settled turn gives back what it took.
  expect(Math.abs(energy)).toBeLessThan(2e-3 * (high - low));
  return high - low;
}

describe('a settled engine', () => {
  const light = settledWith(0.15);
  const heavy = settledWith(0.6);

  it.each([
    { name: 'light', cycle: light, momentOfInertia: 0.15 },
    { name: 'heavy', cycle: heavy, momentOfInertia: 0.6 },
  ])('$name flywheel: fluctuates as its turning-moment diagram says', ({ cycle, momentOfInertia }) => {
    const { speed } = cycle.profile;
    const middle = (Math.max(...speed) + Math.min(...speed)) / 2;
    const expected = energySwing(cycle) / (momentOfInertia * middle * cycle.speed);
    // Torque at every degree only: its jump at the admission is smeared over one.
    expectWithin(cycle.speedFluctuation, expected, 0.01);
  });

  it('fluctuates a quarter as much with four times the flywheel', () => {
    // Not quite: the load feels the speed, and the fluctuation is not small.
    expectWithin(heavy.speedFluctuation / light.speedFluctuation, 1 / 4, 0.03);
    expect(light.speedFluctuation).toBeGreaterThan(0.02);
  });
});
