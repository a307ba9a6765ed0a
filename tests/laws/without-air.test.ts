/** An engine without pressure behind it does not start, and comes to rest when spun by hand. */
import { expect, it } from 'vitest';
import { runEngine } from '../../src/run/run-engine.ts';
import { constantLoad, discGear, inertia, referenceSpec, spoolGear } from '../support/reference-engine.ts';

const ROOM = 101_325;
const noAir = { supply: { pressure: ROOM, temperature: 285.15 }, load: constantLoad(0) };

it.each([
  ['spools', spoolGear()],
  ['a disc', discGear()],
])('with %s it does not start by itself', (_name, valve_gear) => {
  const { outcome, trace } = runEngine(referenceSpec({ ...noAir, valve_gear }));
  expect(outcome.kind).toBe('no-start');
  expect(Math.max(...trace.speed)).toBe(0);
  expect(outcome.missingTorque).toBeGreaterThan(0.25);
});

it.each([
  ['spools', spoolGear()],
  ['a disc', discGear()],
])('with %s and a push it comes to rest', (_name, valve_gear) => {
  const spec = referenceSpec({ ...noAir, valve_gear, flywheel: inertia(0.1), start: { hand_speed: 25 } });
  const { outcome } = runEngine(spec);
  expect(outcome.kind).toBe('stalled');
  expect(outcome.turns).toBeGreaterThanOrEqual(1);
});

it('a push that does not carry it round is no start', () => {
  const { outcome } = runEngine(referenceSpec({ ...noAir, start: { hand_speed: 3 } }));
  expect(outcome.kind).toBe('no-start');
  expect(outcome.turns).toBe(0);
});
