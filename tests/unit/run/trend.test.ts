/**
 * When a run of turns counts as settled, by its speeds alone: those of a law of ours, by which no root is found near them.
 */
import { describe, expect, it } from 'vitest';
import { SLOT } from '../../../src/model/slots.ts';
import { settle } from '../../../src/run/settle.ts';
import { engineStepper, FINE, FOLLOWING } from '../../../src/run/stepper.ts';
import { measuredTurn, motionOf, systemOf } from '../../support/drive.ts';
import { expectWithin } from '../../support/expect-within.ts';
import { DEGREE, referenceSpec } from '../../support/reference-engine.ts';
import { stepperByLaw } from '../../support/stepper-by-law.ts';

const MOST = 200;
const system = systemOf(referenceSpec());
const FIRST_MASS = system.slots.mass(0);

/** Turn after turn with the speed of its number, from one on; ends without settling after two hundred. */
function settledBy(speedOf: (turn: number) => number, gas?: Float64Array) {
  const { stepper } = stepperByLaw({
    inAngle: (y, to, { events }) => {
      // Who looks for a root asks for no events.
      if (!events && !gas) return { reason: 'step-limit', x: to };
      const turn = Math.round(to / (2 * Math.PI));
      y[SLOT.speed] = speedOf(turn);
      y[SLOT.time]! += turn > MOST ? 1e6 : 0;
      return undefined;
    },
  });
  const motion = motionOf(system, { angle: 0, speed: speedOf(0), longestTime: 1e6 });
  if (gas) motion.y.set(gas, FIRST_MASS);
  const { end, spunUp } = settle({ ...motion, stepper });
  return { kind: end.kind, turns: Math.round(spunUp[0]! / (2 * Math.PI)), y: motion.y, spunUp };
}

describe('turns settle', () => {
  it('that are all alike: after three', () => {
    expect(settledBy(() => 30)).toMatchObject({ kind: 'settled', turns: 3 });
  });

  it('that approach a limit by halves, once they are within 2e-5 of it', () => {
    // Looked at when one per cent is left, at the fourth turn; then at the eighth, with 4e-4 left, and the sixteenth.
    const { kind, turns, y, spunUp } = settledBy((turn) => 30 * (1 - 0.1 * 0.5 ** turn));
    expect({ kind, turns }).toEqual({ kind: 'settled', turns: 16 });
    expect(spunUp).toEqual(y);
    expect(spunUp).not.toBe(y);
  });

  it.each([0.1, -0.1])('that approach it from above, or swing about it (by a factor of %f)', (factor) => {
    // Looked at at the third turn, with 1e-4 left, and at the sixth.
    expect(settledBy((turn) => 30 * (1 + 0.1 * factor ** turn))).toMatchObject({ kind: 'settled', turns: 6 });
  });

  it('not at a turn that still changed, however little is said to be left', () => {
    expect(settledBy((turn) => [5, 10, 29, 29.01][turn] ?? 29.01)).toMatchObject({
      kind: 'settled',
      turns: 6,
    });
  });

  it('not at once after two that happen to be alike', () => {
    expect(settledBy((turn) => [5, 20, 20, 29][turn] ?? 30).turns).toBeGreaterThan(4);
  });

  it.each([
    ['grow by the same amount each time', (turn: number) => 30 + 0.001 * turn],
    ['fall by the same amount each time', (turn: number) => 30 - 0.001 * turn],
    ['swing to and fro for ever', (turn: number) => 30 + 0.01 * (-1) ** turn],
    ['run away', (turn: number) => 30 + 1e-6 * 1.05 ** turn],
  ])('never that %s', (_name, speedOf) => {
    expect(settledBy(speedOf)).toMatchObject({ kind: 'time over' });
  });
});

describe('an engine that settles', () => {
  /** From rest. */
  function settled() {
    const start = { angle: 40 * DEGREE, speed: 0, longestTime: 60 };
    const motion = motionOf(system, start, engineStepper(system, FOLLOWING));
    return { ...settle(motion), y: motion.y };
  }

  it('is handed over in a turn that gives back its beginning, found long before it would have come there', () => {
    const { end, spunUp, y } = settled();
    expect(end).toEqual({ kind: 'settled' });
    const { before, after } = measuredTurn(system, y);
    expectWithin(after[SLOT.speed]!, before[SLOT.speed]!, 1e-5);
    for (let i = system.slots.mass(0); i < system.slots.firstTotal; i += 1)
      expectWithin(after[i]!, before[i]!, 2e-4);
    // One per cent of the speed was still to come.
    const left = Math.abs(spunUp[SLOT.speed]! / y[SLOT.speed]! - 1);
    expect(left).toBeGreaterThan(1e-3);
    expect(left).toBeLessThan(0.02);
    expect(spunUp[SLOT.crankAngle]! / (2 * Math.PI)).toBeLessThan(60);
    // Its books are those of the run so far.
    expect(y.slice(system.slots.firstTotal)).toEqual(spunUp.slice(system.slots.firstTotal));
    expect(FINE.turning).toBeLessThan(FOLLOWING.turning);
  });

  it('has a root that is not taken for that of turns which settle a tenth away', () => {
    const { y } = settled();
    const root = y[SLOT.speed]!;
    const gas = y.slice(FIRST_MASS);
    const near = settledBy((turn) => 1.02 * root * (1 - 0.1 * 0.1 ** turn), gas);
    expectWithin(near.y[SLOT.speed]!, root, 1e-4);
    const far = settledBy((turn) => 1.1 * root * (1 - 0.1 * 0.1 ** turn), gas);
    expect(far.kind).toBe('settled');
    expectWithin(far.y[SLOT.speed]!, 1.1 * root, 1e-4);
  });
});
