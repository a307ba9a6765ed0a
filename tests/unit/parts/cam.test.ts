/** A cam opens and shuts the port exactly where it is wished, whatever its law, lash and lap. */
import { describe, expect, it } from 'vitest';
import { camFor, camEdges, spoolLift, type Cam } from '../../../src/parts/cams/cam.ts';
import { camAngleAtLift, camLaws, type CamLaw } from '../../../src/parts/cams/cam-law.ts';
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
