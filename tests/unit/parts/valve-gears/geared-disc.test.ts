/** A disc geared down: more slots, the same events, slots as long as the gearing leaves them, a ninth of the drag. */
import { describe, expect, it } from 'vitest';
import { rotaryDisc } from '../../../../src/parts/valve-gears/rotary-disc.ts';
import { filled } from '../../../support/chosen.ts';
import { areaOf, context, DEGREE, eventDeviation, leakFlow, noAir, observedEvents, sizeOf } from './bench.ts';

const at = (degrees: number) => ({ by: 'angle', angle: degrees * DEGREE });
const track = (pitch: number, hole: number, opens: number, closes: number) => ({
  pitch_radius: pitch,
  hole_diameter: hole,
  slot_width: hole,
  opens: at(opens),
  closes: at(closes),
});

const chosen = (slots: number, others: Readonly<Record<string, unknown>> = {}) =>
  rotaryDisc.choose(
    filled(rotaryDisc.parameters, {
      disc_diameter: 0.1,
      shaft_diameter: 12e-3,
      slots,
      face_gap: 20e-6,
      film_viscosity: 0.05,
      admission: track(38e-3, 6e-3, -5, 100),
      exhaust: track(26e-3, 7e-3, 165, 325),
      ...others,
    }),
  );
const gearWith = (slots: number, others = {}) => chosen(slots, others).build(context);
const slot = 'admission slot, between the centres of its round ends';
/** 2α of the admission track. */
const touching = 4 * Math.asin(6 / (2 * 38));

describe('a disc with n slots a track', () => {
  it.each([1, 2, 3])('n = %i: opens and shuts once in a turn of the crank, when it should', (n) => {
    const gear = gearWith(n);
    expect(eventDeviation(gear.events, observedEvents(gear))).toBeLessThan(1e-4);
    expect(eventDeviation(gear.events, gearWith(1).events)).toBeLessThan(1e-12);
  });

  it.each([1, 2, 3])('n = %i: has slots that keep the port open as long', (n) => {
    expect(n * (sizeOf(gearWith(n), slot) + touching)).toBeCloseTo(105 * DEGREE, 9);
  });

  it('opens more slowly in terms of the crank', () => {
    const opening = (n: number): number => areaOf(gearWith(n), 'admission')(5 * DEGREE);
    expect(opening(2)).toBeLessThan(0.6 * opening(1));
    // The hole's end of the slot travels as far in 20° at half speed as in 10°.
    const half = areaOf(gearWith(2), 'admission')(15 * DEGREE);
    expect(half).toBeCloseTo(areaOf(gearWith(1), 'admission')(5 * DEGREE), 12);
  });

  it('drags a square less at the crankshaft', () => {
    const drag = (n: number): number => gearWith(n).dragTorque(0, 30, noAir);
    expect(drag(1)).toBeGreaterThan(0);
    expect(drag(3)).toBeCloseTo(drag(1) / 9, 12);
  });

  it('leaks more past its shut slots, whose ends are nearer', () => {
    const leak = (n: number): number => leakFlow(gearWith(n), 'past the shut admission slot', 230 * DEGREE);
    expect(leak(2)).toBeGreaterThan(1.1 * leak(1));
    expect(leak(3)).toBeGreaterThan(1.1 * leak(2));
  });

  it('leaks alike past either end, half way through the shut stretch', () => {
    const leak = (degrees: number): number =>
      leakFlow(gearWith(3), 'past the shut admission slot', degrees * DEGREE);
    const middle = 100 + (360 - 105) / 2;
    for (const off of [10, 60, 120]) expect(leak(middle + off)).toBeCloseTo(leak(middle - off), 12);
    expect(leak(middle + 120)).toBeGreaterThan(leak(middle));
  });

  it.each([1, 2, 3])('n = %i: has edges alike before opening and after shutting', (n) => {
    // Both openings are centred on the line through 47.5°, so that all edges mirror there.
    const { edges } = gearWith(n, { exhaust: track(26e-3, 7e-3, 147.5, 307.5) });
    const mirroredEdges = edges.map((edge) => (95 * DEGREE - edge + 4 * Math.PI) % (2 * Math.PI));
    const apart = (a: number, b: number): number => Math.abs(Math.sin((a - b) / 2));
    for (const edge of mirroredEdges)
      expect(Math.min(...edges.map((own) => apart(own, edge)))).toBeLessThan(1e-7);
    // On each track six bends of the overlap, and where the land begins to grow on either side. Only an ungeared disc
    // turns half round while shut, after which the land shrinks again.
    expect(edges).toHaveLength(n === 1 ? 20 : 16);
  });

  it('is advanced n times as far by turning the plates', () => {
    const { admission } = gearWith(2, { body_advance: 3 * DEGREE }).events;
    expect(admission).toBeCloseTo((360 - 5 - 6) * DEGREE, 9);
  });

  it('admits in reverse as it does forward, its plates turned over by the cut-off less the lead', () => {
    const { reverse } = gearWith(1, { reverse_turn: 95 * DEGREE });
    expect(reverse?.serves).toBe(true);
    const backwards = reverse!.gear();
    expect(backwards.events.admission).toBeCloseTo(355 * DEGREE, 9);
    expect(backwards.events.cutOff).toBeCloseTo(100 * DEGREE, 9);
    expect(eventDeviation(backwards.events, observedEvents(backwards))).toBeLessThan(1e-4);
    expect(gearWith(1).reverse).toBeUndefined();
  });

  it('cannot open for less than its holes take, nor have more slots than there is room for', () => {
    const paths = (n: number, others = {}) => chosen(n, others).complaints(context);
    expect(paths(3)).toEqual([]);
    expect(paths(6).map(({ path }) => path.join('.'))).toEqual(['admission.closes', 'exhaust.closes']);
    const wide = { exhaust: track(26e-3, 16e-3, 165, 325), admission: track(42e-3, 6e-3, -5, 200) };
    const [complaint] = paths(6, wide).filter(({ path }) => path[0] === 'slots');
    expect(complaint?.expected).toContain('at most 5 with the exhaust');
    expect(paths(5, wide).filter(({ path }) => path[0] === 'slots')).toEqual([]);
  });
});
