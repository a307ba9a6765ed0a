/** Whether cams can be cut, as a condition of a study. */
import { describe, expect, it } from 'vitest';
import type { EngineSpec } from '../../../src/index.ts';
import { checkCam } from '../../../src/parts/cams/cam-check.ts';
import { partContext } from '../../../src/parts/engine-description.ts';
import { followerOf } from '../../../src/parts/valve-gears/cam-spools-base-circle.ts';
import { camOf, type CamSpools } from '../../../src/parts/valve-gears/cam-spools-parameters.ts';
import { conditions } from '../../../src/study/conditions/registry.ts';
import { engineAnswer, type EngineAnswer } from '../../../src/study/engine-answer.ts';
import { shippedSpec, withGear } from '../../support/drawn.ts';

const press = shippedSpec('cider-press.yaml');
const DEGREE = Math.PI / 180;

const answer = (spec: EngineSpec): EngineAnswer => engineAnswer(spec, { starts: false, cams: true });
const canBeCut = (base_circle: number) =>
  conditions.kinds
    .find((own) => own.kind === 'cams can be cut')!
    .choose({ base_circle })
    .build(null);

/** Whether both cams keep to the limits of the scenario on a base circle [m]. */
function keepsLimits(spec: EngineSpec, baseCircle: number): boolean {
  const gear = spec.valve_gear.values as unknown as CamSpools;
  return (['admission', 'exhaust'] as const).every((name) => {
    const cam = camOf(gear, name, partContext(spec));
    const { sharpest, pressureAngle } = checkCam({
      cam,
      follower: followerOf(gear),
      baseRadius: baseCircle / 2,
    });
    return sharpest >= gear.cams.smallest_radius && pressureAngle <= gear.cams.largest_pressure_angle;
  });
}

describe('cams can be cut', () => {
  it('on the smallest base circle that keeps curvature and pressure angle within limits', () => {
    const { baseCircle } = answer(press).values;
    expect(keepsLimits(press, baseCircle! + 1e-6)).toBe(true);
    expect(keepsLimits(press, baseCircle! - 20e-6)).toBe(false);
    expect(canBeCut(baseCircle! + 1e-6).margin(answer(press))).toBeGreaterThan(0);
    expect(canBeCut(baseCircle! - 1e-6).margin(answer(press))).toBeLessThan(0);
  });

  it('on a larger one when the flank is steeper', () => {
    const steep = withGear(press, { admission: { flank: 30 * DEGREE } });
    expect(answer(steep).values.baseCircle).toBeGreaterThan(1.2 * answer(press).values.baseCircle!);
  });

  it('on none when no circle is large enough', () => {
    const hopeless = withGear(press, { cams: { smallest_radius: 0.6 } });
    const own = answer(hopeless);
    expect(own.values.baseCircle).toBe(Infinity);
    expect(canBeCut(1).margin(own)).toBeCloseTo(-0.99, 12);
  });

  it('of an engine that has none', () => {
    const own = answer(shippedSpec('apple-washer-geared-disc.yaml'));
    expect(own.outcome).toBe('settled');
    expect(own.values.baseCircle).toBeUndefined();
    expect(canBeCut(0.02).margin(own)).toBe(1);
  });

  it('is reckoned only where it is asked', () => {
    expect(canBeCut(0.04).needs).toBe('cams');
    expect(engineAnswer(press, { starts: false, cams: false }).values.baseCircle).toBeUndefined();
  });
});
