/** A stepper: where it stops, that ledgers do not steer it, and how closely and dearly it follows. */
import { describe, expect, it } from 'vitest';
import { buildEngine } from '../../../src/model/engine.ts';
import { initialState } from '../../../src/model/initial-state.ts';
import { SLOT } from '../../../src/model/slots.ts';
import { engineSystem, type EngineSystem } from '../../../src/model/system.ts';
import { oneTurn } from '../../../src/run/one-turn.ts';
import {
  CLOSER,
  engineStepper,
  FINE,
  FOLLOWING,
  QUICK,
  ROUGH,
  type Accuracy,
} from '../../../src/run/stepper.ts';
import { expectWithin } from '../../support/expect-within.ts';
import { atStart, idealEngine, idealGear, plainHose } from '../../support/ideal-engine.ts';
import { DEGREE, referenceSpec } from '../../support/reference-engine.ts';

const TURN = 2 * Math.PI;
const engine = buildEngine(referenceSpec());
const system = engineSystem(engine);
const withoutTotals = engineSystem(engine, { totals: false });

/** At top dead centre at 40 rad/s, the chest full. */
function beginning(of: EngineSystem = system): Float64Array {
  const y = initialState(of, 0, 40);
  for (const slot of [of.slots.mass(0), of.slots.energy(0)])
    y[slot]! *= engine.supply.pressure / engine.atmosphere.pressure;
  return y;
}

/** Three turns. */
function turned(accuracy: Accuracy, of = system) {
  const stepper = engineStepper(of, accuracy);
  const y = beginning(of);
  for (let i = 0; i < 3; i += 1) expect(oneTurn(stepper, y)).toBeUndefined();
  return { y, speed: y[SLOT.speed]!, counters: stepper.counters };
}

/** The air coming on, the crank at rest, for a second. */
function filled(accuracy: Accuracy, of = system) {
  const stepper = engineStepper(of, accuracy);
  const y = initialState(of, 40 * DEGREE, 0);
  expect(stepper.inTime(0, y, 1, { stepLimit: 10_000 })).toEqual({ reason: 'end', x: 1 });
  return { y, pressure: of.observe(y).pressure[engine.chest]!, counters: stepper.counters };
}

const exact: Accuracy = { ...FINE, turning: 1e-8, nearRest: 1e-10 };

describe('turning', () => {
  const closest = turned(exact);

  it.each([
    { name: 'fine', accuracy: FINE, deviation: 1e-5, steps: 3 },
    { name: 'following', accuracy: FOLLOWING, deviation: 2e-4, steps: 6 },
    { name: 'closer', accuracy: CLOSER, deviation: 2e-4, steps: 5 },
    { name: 'quick', accuracy: QUICK, deviation: 1e-3, steps: 8 },
    { name: 'rough', accuracy: ROUGH, deviation: 2e-2, steps: 15 },
  ])('$name is that close, and so many times cheaper than the closest', ({ accuracy, deviation, steps }) => {
    const { speed, counters } = turned(accuracy);
    expectWithin(speed, closest.speed, deviation);
    expect(counters.acceptedSteps).toBeLessThan(closest.counters.acceptedSteps / steps);
    expect(counters.derivativeCalls).toBeGreaterThan(counters.acceptedSteps);
  });

  it('stops at every edge, or where ports open and shut', () => {
    expect(engineStepper(system).stops).toBe(engine.edges);
    expect(engineStepper(system, CLOSER).stops).toBe(engine.edges);
    expect(engineStepper(system, QUICK).stops).toBe(engine.events);
    expect(engine.events.length).toBeLessThan(engine.edges.length);
  });

  it('arrives at its goal to the last digit', () => {
    const y = beginning();
    expect(engineStepper(system).inAngle(y, 0.1, { stepLimit: 1000 })).toEqual({ reason: 'end', x: 0.1 });
    expect(y[SLOT.crankAngle]).toBe(0.1);
  });

  it('stops where a speed is passed, and shows the speed on the way', () => {
    const y = beginning();
    const most = 40.2;
    const seen: number[] = [];
    const arrival = engineStepper(system).inAngle(y, 1, {
      ...{ stepLimit: 1000, events: [{ value: (_x, component) => most - component(SLOT.speed) }] },
      onStep: (step) => seen.push(step.component(SLOT.speed, step.to)),
    });
    expect(arrival).toMatchObject({ reason: 'event', event: 0 });
    expect(arrival.x).toBeLessThan(1);
    expectWithin(y[SLOT.speed]!, most, 1e-9);
    for (const speed of seen) {
      expect(speed).toBeGreaterThan(39.5);
      expect(speed).toBeLessThan(most + 1e-6);
    }
  });

  it('is not steered by the ledgers, which only set the energy right by the work on the room', () => {
    const [kept, bare] = [turned(QUICK), turned(QUICK, withoutTotals)];
    expect(bare.counters).toEqual(kept.counters);
    for (const [i, value] of bare.y.entries()) expectWithin(value, kept.y[i]!, 1e-6);
    const far = beginning();
    far.fill(1e6, system.slots.firstTotal);
    const stepper = engineStepper(system, QUICK);
    for (let i = 0; i < 3; i += 1) oneTurn(stepper, far);
    expectWithin(far[SLOT.speed]!, kept.speed, 1e-9);
  });

  it('learns from turn to turn where short steps begin', () => {
    const stepper = engineStepper(system, QUICK);
    const y = beginning();
    const calls = Array.from({ length: 4 }, () => {
      const before = stepper.counters.derivativeCalls;
      oneTurn(stepper, y);
      return stepper.counters.derivativeCalls - before;
    });
    expect(Math.max(...calls.slice(1))).toBeLessThan(calls[0]!);
    expect(y[SLOT.crankAngle]).toBe(4 * TURN);
  });
});

describe('near rest', () => {
  const closest = filled(exact);

  it.each([
    // The open port makes it stiff: the closer one changes its method after three hundred steps.
    { name: 'fine', accuracy: FINE, deviation: 1e-7, steps: 350 },
    { name: 'quick', accuracy: QUICK, deviation: 1e-3, steps: 60 },
  ])('$name is that close, in few steps', ({ accuracy, deviation, steps }) => {
    const { pressure, counters } = filled(accuracy);
    expectWithin(pressure, closest.pressure, deviation);
    expect(counters.acceptedSteps).toBeLessThan(steps);
    expect(counters.acceptedSteps).toBeGreaterThan(5);
  });

  it('is not steered by the ledgers', () => {
    const [kept, bare] = [filled(QUICK), filled(QUICK, withoutTotals)];
    expect(bare.counters.acceptedSteps).toBe(kept.counters.acceptedSteps);
    expect(bare.y).toEqual(kept.y.slice(0, system.slots.firstTotal));
  });

  it('goes the way it is told, and counts what both ways cost', () => {
    const stepper = engineStepper(system);
    const y = initialState(system, 1, 0.5);
    stepper.inTime(1, y, 0.005, { stepLimit: 1000 });
    expect(y[SLOT.crankAngle]).toBeGreaterThan(1);
    const forward = stepper.counters.derivativeCalls;
    const back = initialState(system, 1, -0.5);
    stepper.inTime(-1, back, 0.005, { stepLimit: 1000 });
    expect(back[SLOT.crankAngle]).toBeLessThan(1);
    expect(stepper.counters.derivativeCalls).toBeGreaterThan(1.5 * forward);
    expect(back[system.slots.bearingWork]).toBeGreaterThan(0);
    expect(back[SLOT.time]).toBe(0.005);
  });
});

describe('wide ports on a small volume', () => {
  /** A port so wide that the cylinder follows the chest within microseconds. */
  const wide = idealEngine({
    supply: { pressure: 4e5, hose: plainHose(0.01, 1), chest_volume: 1e-3 },
    valve_gear: idealGear({ area: () => 1e-2, admission: { opens: 5, closes: 4 } }),
  });

  it('are left to the stiff method at rest after some hundreds of steps, as closely as that gets along', () => {
    const { system: stiff, y } = atStart(wide);
    y[SLOT.crankAngle] = 1;
    y[SLOT.speed] = 0;
    const stepper = engineStepper(stiff, FINE);
    expect(stepper.inTime(0, y, 2, { stepLimit: 40_000 }).reason).toBe('end');
    expect(stepper.counters.acceptedSteps).toBeLessThan(4000);
    const { pressure } = stiff.observe(y);
    expectWithin(pressure[stiff.engine.ends[0].place]!, pressure[stiff.engine.chest]!, 1e-4);
    expectWithin(pressure[stiff.engine.chest]!, 4e5, 1e-3);
  });
});
