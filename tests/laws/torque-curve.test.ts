/** The torque at a held speed is what a settled engine brings its load there, and leaks take from it. */
import { describe, expect, it } from 'vitest';
import { buildEngine } from '../../src/model/engine.ts';
import { operatingPoints, secondsBetween } from '../../src/run/operating-points.ts';
import { settledRunning } from '../../src/run/settled-running.ts';
import { slowestTurning, torqueCurve, withoutLeaks } from '../../src/run/torque-curve.ts';
import { constantLoad, growingLoad, pistonLeak, referenceSpec } from '../support/reference-engine.ts';

const engine = buildEngine(referenceSpec());
const curve = torqueCurve(engine);

/** Between two points of the curve by a straight line. */
function torqueAt(speed: number): number {
  const i = curve.speed.findIndex((one) => one >= speed);
  const share = (speed - curve.speed[i - 1]!) / (curve.speed[i]! - curve.speed[i - 1]!);
  return curve.torque[i - 1]! + share * (curve.torque[i]! - curve.torque[i - 1]!);
}

describe('the torque curve', () => {
  it('begins with the slowest turning there is', () => {
    expect(slowestTurning(engine)).toMatchObject({ speed: curve.speed[0], torque: curve.torque[0] });
  });

  it('reaches from slow turning to where nothing is left', () => {
    expect(curve.speed[0]).toBe(2);
    expect(curve.torque.slice(0, -1).every((torque) => torque > 0)).toBe(true);
    expect(curve.torque.at(-1)).toBeLessThanOrEqual(0);
  });

  it.each([0.5, 1, 1.5])('is the load of an engine that settles against %f N m', (torque) => {
    const { settled } = settledRunning(referenceSpec({ load: constantLoad(torque) }));
    expect(torqueAt(settled!.speed)).toBeGreaterThan(torque - 0.08);
    expect(torqueAt(settled!.speed)).toBeLessThan(torque + 0.08);
  });

  it('is that of the engine, whatever it drives', () => {
    expect(torqueCurve(buildEngine(referenceSpec({ load: constantLoad(1) })))).toEqual(curve);
  });

  it('is lower with leaks at slow speeds, and the air is more', () => {
    const leaky = buildEngine(referenceSpec({ leaks: [pistonLeak(60e-6)] }));
    const [tight, loose] = [torqueCurve(withoutLeaks(leaky)), torqueCurve(leaky)];
    expect(loose.torque[0]).toBeLessThan(0.98 * tight.torque[0]!);
    expect(loose.airMassFlow[0]).toBeGreaterThan(tight.airMassFlow[0]!);
  });
});

describe('operating points', () => {
  const { load } = buildEngine(referenceSpec({ load: constantLoad(1) }));

  it('are stable where the torque falls through the load, unstable where it rises through it', () => {
    const hump = {
      speed: Float64Array.of(10, 20, 30, 40),
      torque: Float64Array.of(0, 2, 2, 0),
      airMassFlow: new Float64Array(4),
    };
    expect(operatingPoints(hump, load)).toEqual([
      { speed: 15, stable: false },
      { speed: 35, stable: true },
    ]);
  });

  it('lie where the engine settles', () => {
    const spec = referenceSpec({ load: growingLoad(0.5, 0.002) });
    const own = buildEngine(spec);
    const [point] = operatingPoints(torqueCurve(own), own.load);
    const { settled } = settledRunning(spec);
    expect(point!.stable).toBe(true);
    expect(Math.abs(point!.speed / settled!.speed - 1)).toBeLessThan(0.05);
  });

  it('are approached in the time that a constant surplus takes: J Δω/(T − L)', () => {
    const flat = {
      speed: Float64Array.of(10, 20, 30),
      torque: Float64Array.of(3, 3, 3),
      airMassFlow: new Float64Array(3),
    };
    expect(secondsBetween(flat, load, 0.4, 12, 27)).toBeCloseTo((0.4 * 15) / 2, 12);
    expect(secondsBetween({ ...flat, torque: Float64Array.of(3, 1, 1) }, load, 0.4, 12, 27)).toBe(Infinity);
  });
});
