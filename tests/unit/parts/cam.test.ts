/** A cam opens and shuts the port exactly where it is wished, whatever its law, lash and lap. */
import { describe, expect, it } from 'vitest';
import { camFor, camEdges, spoolLift, type Cam } from '../../../src/parts/cams/cam.ts';
import { checkCam, smallestBaseRadius } from '../../../src/parts/cams/cam-check.ts';
import { camAngleAtLift, camLaws, type CamLaw } from '../../../src/parts/cams/cam-law.ts';
import { contactAt, type CamShape } from '../../../src/parts/cams/cam-shape.ts';
import { expectWithin } from '../../support/expect-within.ts';
import { DEGREE } from '../../support/reference-engine.ts';

const opens = -5 * DEGREE;
const closes = 100 * DEGREE;
const lap = 1e-3;

const camOf = (law: CamLaw, lash = 0.2e-3): Cam =>
  camFor({ law, lift: 7e-3, lash, flank: 50 * DEGREE, closingFlank: 50 * DEGREE, opens, closes, lap });

describe.each(camLaws)('a cam of the law $name', (law) => {
  const cam = camOf(law);

  it('lifts the spool to the lap where the port opens and where it shuts', () => {
    expect(spoolLift(cam, opens)).toBeCloseTo(lap, 12);
    expect(spoolLift(cam, closes)).toBeCloseTo(lap, 12);
  });

  it('has the port open in between and shut outside', () => {
    const hair = 1e-6;
    expect(spoolLift(cam, opens + hair)).toBeGreaterThan(lap);
    expect(spoolLift(cam, closes - hair)).toBeGreaterThan(lap);
    expect(spoolLift(cam, opens - hair)).toBeLessThan(lap);
    expect(spoolLift(cam, closes + hair)).toBeLessThan(lap);
  });

  it('rests on the base circle and dwells at full lift less lash', () => {
    expect(spoolLift(cam, cam.riseBegins - 0.01)).toBe(0);
    expect(spoolLift(cam, cam.riseBegins + cam.duration + 0.01)).toBe(0);
    expect(spoolLift(cam, (opens + closes) / 2)).toBeCloseTo(6.8e-3, 12);
  });

  it('is the same forwards and backwards, and every turn', () => {
    const middle = (opens + closes) / 2;
    for (const off of [0.1, 0.4, 0.7, 0.9, 1.1]) {
      expect(spoolLift(cam, middle + off)).toBeCloseTo(spoolLift(cam, middle - off), 12);
      expect(spoolLift(cam, middle + off + 4 * Math.PI)).toBeCloseTo(spoolLift(cam, middle + off), 12);
    }
  });

  it('takes up the lash before the spool moves', () => {
    const lashShare = camAngleAtLift(law, 0.2 / 7);
    const moves = cam.riseBegins + lashShare * cam.flank;
    expect(spoolLift(cam, moves - 1e-4)).toBe(0);
    expect(spoolLift(cam, moves + 1e-3)).toBeGreaterThan(0);
  });

  it('names the edges where the spool passes a lift', () => {
    const edges = camEdges(cam, [0, lap, 4e-3]);
    const lifts = edges.map((angle) => spoolLift(cam, angle));
    expect(edges).toHaveLength(10);
    for (const wanted of [0, lap, 4e-3, 6.8e-3])
      expect(lifts.filter((lift) => Math.abs(lift - wanted) < 1e-12).length).toBeGreaterThanOrEqual(2);
  });

  it('leaves out lifts that it never reaches', () => {
    expect(camEdges(cam, [8e-3])).toHaveLength(4);
  });
});

describe('the place of a lift', () => {
  it.each(camLaws)('in the law $name is found to the last bits', (law) => {
    for (const u of [0.01, 0.1, 0.3, 0.5, 0.77, 0.99])
      expect(Math.abs(camAngleAtLift(law, law.lift(u)) - u)).toBeLessThan(1e-12);
  });
});

it('without lash and lap the cam begins where the port opens', () => {
  const cam = camFor({
    law: camLaws[0]!,
    lift: 7e-3,
    lash: 0,
    flank: 0.8,
    closingFlank: 0.8,
    opens,
    closes,
    lap: 0,
  });
  expect(cam.riseBegins).toBeCloseTo(opens, 12);
  expect(cam.duration).toBeCloseTo(closes - opens, 12);
});

it('a longer way back keeps the events, and the fall alone is slower', () => {
  const wish = { law: camLaws[0]!, lift: 7e-3, lash: 0.2e-3, lap: 1e-3, flank: 50 * DEGREE, opens, closes };
  const cam = camFor({ ...wish, closingFlank: 80 * DEGREE });
  const crack = 1e-3;
  expect(spoolLift(cam, opens)).toBeCloseTo(crack, 12);
  expect(spoolLift(cam, closes)).toBeCloseTo(crack, 12);
  const like = camFor({ ...wish, closingFlank: 50 * DEGREE });
  expect(cam.riseBegins).toBe(like.riseBegins);
  const end = cam.riseBegins + cam.duration;
  expect(spoolLift(cam, end - 80 * DEGREE)).toBeCloseTo(6.8e-3, 12);
  expect(spoolLift(cam, end - 40 * DEGREE)).toBeCloseTo(7e-3 / 2 - 0.2e-3, 12);
});

describe('the tightest hollow of a cam', () => {
  const cycloidal = camLaws.find(({ name }) => name === 'cycloidal')!;
  const shape = (flank: number): CamShape => ({
    cam: camFor({ law: cycloidal, lift: 8e-3, lash: 0, flank, closingFlank: flank, opens, closes, lap }),
    baseRadius: 12e-3,
    follower: { face: 'roller', radius: 4e-3, offset: 0 },
  });

  /** Signed radius of the circle through three neighbouring points of the outline; negative in a hollow. */
  function radiusAt(own: CamShape, angle: number): number {
    const at = (step: number): P => contactAt(own, angle + step);
    const [a, b, c] = [at(-1e-4), at(0), at(1e-4)];
    const twiceArea = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    const side = (p: P, q: P): number => Math.hypot(p.x - q.x, p.y - q.y);
    return (side(a, b) * side(b, c) * side(c, a)) / (2 * twiceArea);
  }
  type P = Readonly<Record<'x' | 'y', number>>;

  it('is that of circles through three points of its outline', () => {
    const steep = shape(40 * DEGREE);
    const radii = Array.from({ length: 500 }, (_, i) =>
      radiusAt(steep, (0.01 + 0.98 * (i / 499)) * 40 * DEGREE),
    );
    const tightest = Math.min(...radii.filter((radius) => radius < 0).map((radius) => -radius));
    expectWithin(checkCam(steep).hollow!, tightest, 1e-3);
  });

  it('is none where the cam is convex all round, nor under a flat face', () => {
    const gentle = { ...shape(120 * DEGREE), baseRadius: 60e-3 };
    expect(radiusAt(gentle, 20 * DEGREE)).toBeGreaterThan(0);
    expect(checkCam(gentle).hollow).toBeUndefined();
    expect(checkCam({ ...shape(40 * DEGREE), follower: { face: 'flat' } }).hollow).toBeUndefined();
  });
});

it('a base circle that is large enough already is left as it is', () => {
  const law = camLaws.find(({ name }) => name === 'cycloidal')!;
  const wish = { cam: camOf(law), follower: { face: 'roller', radius: 4e-3, offset: 0 } } as const;
  const limits = { sharpest: 2e-3, pressureAngle: 30 * DEGREE };
  const smallest = smallestBaseRadius(wish, limits, 1e-3)!;
  expect(smallest).toBeGreaterThan(5e-3);
  expect(smallestBaseRadius(wish, limits, 1.5 * smallest)).toBe(1.5 * smallest);
  expect(checkCam({ ...wish, baseRadius: smallest }).pressureAngle).toBeLessThanOrEqual(limits.pressureAngle);
});
