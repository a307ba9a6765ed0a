/** Flywheels: moment of inertia, energy against fluctuation of speed, and running down under a constant torque. */
import { describe, expect, it } from 'vitest';
import type { AcceptedStep } from '../../src/numerics/integrator.ts';
import { SLOT } from '../../src/model/slots.ts';
import { partContext } from '../../src/parts/engine-description.ts';
import { discFlywheel } from '../../src/parts/flywheels/disc.ts';
import { givenFlywheel } from '../../src/parts/flywheels/given.ts';
import { ringFlywheel } from '../../src/parts/flywheels/ring.ts';
import { constantLoad } from '../../src/parts/loads/constant.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { engineStepper } from '../../src/run/stepper.ts';
import { expectWithin } from '../support/expect-within.ts';
import { atStart, idealEngine, idealGear, NO_FRICTION } from '../support/ideal-engine.ts';

const TURN = 2 * Math.PI;
const RPM = TURN / 60;

/** Speeds along a step. */
const speedsWithin = (step: AcceptedStep): number[] =>
  Array.from({ length: 101 }, (_, i) =>
    step.component(SLOT.speed, step.from + (i / 100) * (step.to - step.from)),
  );

describe('moment of inertia', () => {
  const context = partContext(idealEngine({}));

  it('steel disc of 100 × 10 mm: 7.707e-4 kg m² (derived)', () => {
    const disc = discFlywheel.choose({ diameter: 0.1, thickness: 0.01, material: 'steel' }).build(context);
    expectWithin(disc.momentOfInertia, 7.707e-4, 1e-3);
  });

  it('ring of 1 kg, 100 outside and 80 mm inside: 2.05e-3 kg m² (derived)', () => {
    const thickness = 1 / (7850 * Math.PI * (0.05 ** 2 - 0.04 ** 2));
    const ring = ringFlywheel.choose({
      outer_diameter: 0.1,
      inner_diameter: 0.08,
      thickness,
      material: 'steel',
    });
    expectWithin(ring.build(context).momentOfInertia, 2.05e-3, 1e-3);
  });
});

describe('a machine whose torque swings between 750 and 3000 N m', () => {
  // Khurmi and Gupta, Theory of Machines, chapter 16 (seen): over three turns the torque rises for half a turn, stays for
  // one, falls for half a turn, stays for one. Driven by its mean, 250 rpm, 500 kg at 0.6 m. Last printed digit.
  const machine = (angle: number): number => {
    const turns = (angle / TURN) % 3;
    if (turns < 0.5) return 750 + 4500 * turns;
    if (turns < 1.5) return 3000;
    return Math.max(750, 3000 - 4500 * (turns - 1.5));
  };

  it('takes 49.087 kW and lets the speed fluctuate by 0.0716 (seen)', () => {
    const spec = idealEngine({
      cylinder: { bore: 1e-3 },
      flywheel: givenFlywheel.choose({ moment_of_inertia: 500 * 0.6 ** 2 }),
      valve_gear: idealGear({ area: () => 0, torque: machine }),
      // A load that drives, as nothing else here gives the same torque all round.
      load: constantLoad.choose({ torque: -1875 }),
      start: { hand_speed: 250 * RPM },
    });
    const { system, y } = atStart(spec);
    const stepper = engineStepper(system);
    const speeds: number[] = [];
    for (let half = 1; half <= 6; half += 1) {
      const arrival = stepper.inAngle(y, half * Math.PI, {
        stepLimit: 10_000,
        onStep: (step) => speeds.push(...speedsWithin(step)),
      });
      expect(arrival.reason).toBe('end');
    }
    const [slowest, fastest] = [Math.min(...speeds), Math.max(...speeds)];
    const mean = (slowest + fastest) / 2;
    // The speed at the start is not quite the mean speed; ΔE = J ω² C refers to that.
    expectWithin(((fastest - slowest) / mean) * (mean / (250 * RPM)) ** 2, 0.07162, 1e-3);
    expectWithin((y[system.slots.gearWork]! / 3) * (250 / 60), 49_087, 1e-4);
    expectWithin(y[SLOT.speed]!, 250 * RPM, 1e-6);
  });
});

describe('a flywheel of 5 kg m² at 60 rad/s that stops in five minutes', () => {
  // H. C. Verma, Concepts of Physics, rotational mechanics (inputs seen, answers from memory).
  const { outcome, trace, ledger } = runEngine(
    idealEngine({
      // So small a cylinder that the air shut up in it, a spring, is nothing beside the brake.
      cylinder: { bore: 1e-3, stroke: 1e-3, rod_length: 2e-3, clearance: 1 },
      flywheel: givenFlywheel.choose({ moment_of_inertia: 5 }),
      friction: { ...NO_FRICTION, running_torque: 1, breakaway_torque: 1 },
      start: { hand_speed: 60 },
    }),
  );
  const stopped = trace.speed.findIndex((speed) => speed < 1e-6);

  it('is braked by 1.0 N m, that is: stops after 300 s and 9000 rad', () => {
    expect(outcome.kind).toBe('stalled');
    expectWithin(trace.time[stopped]!, 300, 1e-4);
    expectWithin(trace.crankAngle[stopped]!, 9000, 1e-4);
    expect(ledger.energy).toBeLessThan(1e-6);
  });

  it('has an angular momentum of 60 kg m²/s after four minutes', () => {
    const i = trace.time.findIndex((time) => time >= 240);
    const [before, after] = [trace.time[i - 1]!, trace.time[i]!];
    const share = (240 - before) / (after - before);
    const speed = trace.speed[i - 1]! + share * (trace.speed[i]! - trace.speed[i - 1]!);
    expectWithin(5 * speed, 60, 1e-3);
  });
});
