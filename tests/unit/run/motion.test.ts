/** Rest, break-away, turning: when each milestone is reached, against closed forms. */
import { describe, expect, it } from 'vitest';
import { initialState } from '../../../src/model/initial-state.ts';
import { SLOT } from '../../../src/model/slots.ts';
import { chokedFlow } from '../../../src/gas/nozzle.ts';
import { pistonTravel, pistonTravelRate } from '../../../src/parts/crank-train.ts';
import type { EngineSpec } from '../../../src/parts/engine-description.ts';
import { wallHeats } from '../../../src/parts/wall-heat/registry.ts';
import { motionFrom, nextMilestone, type Milestone, type Motion } from '../../../src/run/motion.ts';
import { engineStepper, type Stepper } from '../../../src/run/stepper.ts';
import { traceRecorder } from '../../../src/run/trace-recorder.ts';
import { chosen } from '../../support/chosen.ts';
import { plainHose } from '../../support/ideal-engine.ts';
import { motionOf, systemOf } from '../../support/drive.ts';
import {
  constantLoad,
  DEGREE,
  holeLeak,
  inertia,
  referenceSpec,
  spoolGear,
} from '../../support/reference-engine.ts';

const ROOM = 101_325;
const adiabatic = chosen(wallHeats, 'none', {});

/** No leaks but those named, and no friction but those named. */
const bare = (overrides: Parameters<typeof referenceSpec>[0]): EngineSpec =>
  referenceSpec({
    valve_gear: spoolGear({ clearance: 0 }),
    leaks: [],
    load: constantLoad(0),
    friction: {
      running_torque: 0,
      breakaway_torque: 0,
      viscous_torque: 0,
      piston_force: 0,
      piston_force_per_pressure: 0,
    },
    ...overrides,
  });

/** The milestone that ends a run. */
function lastMilestone(motion: Motion): Milestone {
  for (;;) {
    const milestone = nextMilestone(motion);
    if (milestone.kind !== 'turn') return milestone;
  }
}

describe('breaking away', () => {
  /*
   * Both ports shut at 120°; a fine hole from a chest held at 10 bar fills the cylinder with choked, hence steady, flow:
   * p = p_atm + (γ−1) cp T_chest ṁ t / V. It moves once (p − p_atm)(A − k) x′ exceeds the holding torque.
   */
  const angle = 120 * DEGREE;
  const load = constantLoad(4.5);
  const hole = holeLeak('chest to cylinder', 0.3e-3);
  const gaugePerForce = 5e-5;
  const spec = bare({
    load,
    cylinder: { wall_heat: adiabatic },
    leaks: [hole],
    friction: { breakaway_torque: 0.4, piston_force: 0, piston_force_per_pressure: gaugePerForce },
    supply: { pressure: 10e5, chest_volume: 0.1, hose: plainHose(0.05, 0.01) },
  });

  it('happens when the pressure has risen to what the engine holds', () => {
    const system = systemOf(spec);
    const { engine, slots } = system;
    const real = engineStepper(system);
    let brokeAwayAt = NaN;
    const watching: Stepper = {
      ...real,
      inTime(direction, y, toTime, journey) {
        const arrival = real.inTime(direction, y, toTime, journey);
        if (direction === 0 && arrival.reason === 'event') brokeAwayAt ||= arrival.x;
        return arrival;
      },
    };
    const y = initialState(system, angle, 0);
    y[slots.mass(0)]! *= 10e5 / ROOM;
    y[slots.energy(0)]! *= 10e5 / ROOM;
    const motion = motionFrom({
      system,
      stepper: watching,
      recorder: traceRecorder(system),
      y,
      longestTime: 5,
    });
    nextMilestone(motion);

    const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
    const lever = pistonTravelRate(engine.crank, sin, cos);
    const [{ area, clearanceVolume }] = engine.ends;
    const volume = clearanceVolume + area * pistonTravel(engine.crank, sin, cos);
    const holding = 4.5 + 0.4 + 0.06;
    const gauge = holding / ((area - gaugePerForce) * lever);
    const { gas, atmosphere } = engine;
    const flow = chokedFlow(gas, (0.65 * Math.PI * 0.3e-3 ** 2) / 4, 10e5, atmosphere.temperature);
    const rise =
      ((gas.heatCapacityRatio - 1) * gas.heatCapacityAtConstantPressure * atmosphere.temperature * flow) /
      volume;
    expect(gauge + ROOM).toBeLessThan(5e5);
    // The chest is held by a wide hose, but not perfectly.
    expect(Math.abs(brokeAwayAt / (gauge / rise) - 1)).toBeLessThan(1e-3);
  });
});

describe('coming to rest', () => {
  it('under a steady load takes ω J/τ, over ω² J/2τ', () => {
    const spec = bare({
      load: constantLoad(50),
      flywheel: inertia(10),
      supply: { pressure: ROOM },
      cylinder: { reciprocating_mass: 0 },
    });
    const motion = motionOf(systemOf(spec), { angle: 40 * DEGREE, speed: 3, longestTime: 30 });
    expect(lastMilestone(motion)).toEqual({ kind: 'rest' });
    // Valve gear, and the air that the piston still moves, add to the load.
    expect((motion.y[SLOT.crankAngle]! - 40 * DEGREE) / ((9 * 10) / (2 * 50.06))).toBeCloseTo(1, 1);
  });
});

describe('turning', () => {
  it('is announced at each top dead centre, exactly there', () => {
    const motion = motionOf(systemOf(referenceSpec()), { angle: 1, speed: 40, longestTime: 30 });
    const angles = [1, 2, 3, 4].map(() => {
      expect(nextMilestone(motion)).toEqual({ kind: 'turn' });
      return motion.y[SLOT.crankAngle]!;
    });
    expect(angles).toEqual([1, 2, 3, 4].map((turn) => turn * 2 * Math.PI));
  });

  it('from a negative angle is announced at zero first', () => {
    const motion = motionOf(systemOf(referenceSpec()), { angle: -1, speed: 40, longestTime: 30 });
    expect(nextMilestone(motion)).toEqual({ kind: 'turn' });
    expect(motion.y[SLOT.crankAngle]).toBe(0);
  });

  it('is not announced again where it has been announced before', () => {
    const motion = motionOf(systemOf(referenceSpec()), { angle: 6, speed: 40, longestTime: 30 });
    motion.announced = 2 * Math.PI;
    expect(nextMilestone(motion)).toEqual({ kind: 'turn' });
    expect(motion.y[SLOT.crankAngle]).toBe(4 * Math.PI);
  });

  it('ends when the time is over', () => {
    const spec = referenceSpec({ flywheel: inertia(100) });
    const motion = motionOf(systemOf(spec), { angle: 0.7, speed: 0, longestTime: 2 });
    expect(lastMilestone(motion)).toEqual({ kind: 'time over' });
    expect(motion.y[SLOT.time]).toBeGreaterThanOrEqual(2);
    expect(motion.y[SLOT.time]).toBeLessThan(3);
  });
});

describe('turning backwards', () => {
  const mirrored = referenceSpec({ valve_gear: spoolGear({ mirrored: true }) });

  it('is noticed after three turns', () => {
    const motion = motionOf(systemOf(mirrored), { angle: -40 * DEGREE, speed: 0, longestTime: 30 });
    expect(lastMilestone(motion)).toEqual({ kind: 'backwards' });
    expect(motion.y[SLOT.speed]).toBeLessThan(0);
  });

  it('is like turning forwards, seen in a mirror', () => {
    const forwards = motionOf(systemOf(referenceSpec()), { angle: 40 * DEGREE, speed: 0, longestTime: 30 });
    const times = [1, 2].map(() => {
      nextMilestone(forwards);
      return forwards.y[SLOT.time]!;
    });
    const system = systemOf(mirrored);
    const real = engineStepper(system);
    const deadCentres: number[] = [];
    const watching: Stepper = {
      ...real,
      inTime(direction, y, toTime, journey) {
        const arrival = real.inTime(direction, y, toTime, journey);
        if (Math.abs(Math.sin(y[SLOT.crankAngle]! / 2)) < 1e-9) deadCentres.push(y[SLOT.time]!);
        return arrival;
      },
    };
    lastMilestone(motionOf(system, { angle: -40 * DEGREE, speed: 0, longestTime: 30 }, watching));
    // At top dead centre number zero the mirrored engine has not gone round yet.
    const rounds = deadCentres.slice(0, 2);
    for (const [i, time] of times.entries()) expect(Math.abs(rounds[i]! / time - 1)).toBeLessThan(1e-5);
  });
});

describe('slow turning over many seconds', () => {
  /** A stepper that refuses to be sent nowhere: asked again and again, the run would never end. */
  function unlessStuck(real: Stepper): Stepper {
    let stuck = 0;
    return {
      ...real,
      inTime(direction, y, toTime, journey) {
        stuck = toTime > y[SLOT.time]! ? 0 : stuck + 1;
        if (stuck > 3) throw new Error(`sent nowhere, again and again, at ${y[SLOT.time]!} s`);
        return real.inTime(direction, y, toTime, journey);
      },
    };
  }

  it('never asks to be carried to where it is', () => {
    const since = 12.594192293568307;
    // The window of ten seconds is over, although its length comes out short by rounding.
    expect(since + 10 - since).toBeLessThan(10);
    const system = systemOf(referenceSpec({ flywheel: inertia(100) }));
    const motion = motionOf(
      system,
      { angle: 1, speed: 0.2, longestTime: since + 10.1 },
      unlessStuck(engineStepper(system)),
    );
    motion.y[SLOT.time] = since + 10;
    motion.watch = { since, angle: 0.5, lastProgress: 0 };
    expect(lastMilestone(motion)).toEqual({ kind: 'time over' });
  });
});
