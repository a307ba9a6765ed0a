/** Flat slide valve and piston valve: openings and lands at known positions, events, leaks, what they cost to drive. */
import { describe, expect, it } from 'vitest';
import { annulusResistance, gapFlow } from '../../../../src/gas/gap.ts';
import { dryAir } from '../../../../src/gas/gases/dry-air.ts';
import type { Clearance } from '../../../../src/kinds/parameter.ts';
import { flatSlideValve } from '../../../../src/parts/valve-gears/flat-slide-valve.ts';
import { pistonValve } from '../../../../src/parts/valve-gears/piston-valve.ts';
import {
  admissionOpening,
  angleOfAdvance,
  displacementLaw,
  exhaustLand,
  exhaustOpening,
  slideValveEdges,
  steamLand,
  type SlideValve,
} from '../../../../src/parts/valve-gears/slide-valve.ts';
import {
  areaOf,
  context,
  DEGREE,
  dragWork,
  eventDeviation,
  leakFlow,
  noAir,
  observedEvents,
  sizeOf,
} from './bench.ts';

const mm = 1e-3;
const micron = 1e-6;

/** Lap and lead together half the eccentricity, so that the angle of advance is 30°. */
const valve: SlideValve = {
  eccentricity: 5 * mm,
  steamLap: 2.2 * mm,
  exhaustLap: 0.5 * mm,
  lead: 0.3 * mm,
  portWidth: 2 * mm,
  barWidth: 4 * mm,
};

const shared = {
  travel: 10 * mm,
  steam_lap: 2.2 * mm,
  exhaust_lap: 0.5 * mm,
  lead: 0.3 * mm,
  port_width: 2 * mm,
  bar_width: 4 * mm,
  discharge_coefficient: 0.7,
  rubbing_force: 20,
  eccentric: 'fixed',
};
const flat = {
  ...shared,
  port_length: 12 * mm,
  cavity_length: 15 * mm,
  rim_width: 3 * mm,
  face_gap: 5 * micron,
  friction_coefficient: 0,
};
const round = {
  ...shared,
  sleeve_bore: 14 * mm,
  port_share: 0.75,
  clearance: { by: 'gap', gap: 8 * micron },
  eccentricity: 1,
  rubbing_force_per_pressure: 0,
  second_head: undefined,
};

const flatGear = (values: Partial<typeof flat> = {}) =>
  flatSlideValve.choose({ ...flat, ...values }).build(context);
const roundGear = (values: Partial<Record<keyof typeof round, number | Clearance>> = {}) =>
  pistonValve.choose({ ...round, ...values }).build(context);

describe('the motion', () => {
  const displacement = displacementLaw(valve);
  it.each([
    { name: 'top dead centre', degrees: 0, at: 2.5 },
    { name: 'towards the chest end', degrees: 60, at: 5 },
    { name: 'middle position', degrees: 150, at: 0 },
    { name: 'bottom dead centre', degrees: 180, at: -2.5 },
    { name: 'the other end', degrees: 240, at: -5 },
  ])('$name: $at mm at $degrees°', ({ degrees, at }) => {
    expect(displacement(degrees * DEGREE) / mm).toBeCloseTo(at, 12);
  });

  it('has the angle of advance whose sine is lap and lead over eccentricity', () => {
    expect(angleOfAdvance(valve) / DEGREE).toBeCloseTo(30, 12);
  });
});

describe('openings and lands', () => {
  it.each([
    // Displacement, opening to chest and exhaust, land on the steam side and over the bar; all mm.
    { s: -5, chest: 0, exhaust: 2, steam: 7.2, bar: 0.005 },
    { s: -1.5, chest: 0, exhaust: 1, steam: 3.7, bar: 0.005 },
    { s: -0.5, chest: 0, exhaust: 0, steam: 2.7, bar: 0.005 },
    { s: 0, chest: 0, exhaust: 0, steam: 2.2, bar: 0.5 },
    { s: 2.2, chest: 0, exhaust: 0, steam: 0.005, bar: 2.7 },
    { s: 3.2, chest: 1, exhaust: 0, steam: 0.005, bar: 3.7 },
    { s: 4.2, chest: 2, exhaust: 0, steam: 0.005, bar: 4 },
    // The steam edge has passed the port and bared 0.8 mm of the bar.
    { s: 5, chest: 2, exhaust: 0, steam: 0.005, bar: 3.2 },
  ])('at $s mm', ({ s, chest, exhaust, steam, bar }) => {
    expect(admissionOpening(valve, s * mm) / mm).toBeCloseTo(chest, 12);
    expect(exhaustOpening(valve, s * mm) / mm).toBeCloseTo(exhaust, 12);
    expect(steamLand(valve, s * mm, 5 * micron) / mm).toBeCloseTo(steam, 12);
    expect(exhaustLand(valve, s * mm, 5 * micron) / mm).toBeCloseTo(bar, 12);
  });

  it('bend at edges only, also where the steam edge has bared the whole bar', () => {
    const narrow = { ...valve, steamLap: 1 * mm, portWidth: 1 * mm, barWidth: 2 * mm };
    const [h, gap] = [1e-4, 5 * micron];
    const edges = slideValveEdges(narrow, gap);
    const displacement = displacementLaw(narrow);
    const laws = [
      (angle: number) => exhaustLand(narrow, displacement(angle), gap),
      (angle: number) => steamLand(narrow, displacement(angle), gap),
      (angle: number) => admissionOpening(narrow, displacement(angle)),
      (angle: number) => exhaustOpening(narrow, displacement(angle)),
    ];
    const isBent = (law: (angle: number) => number, at: number): boolean =>
      Math.abs(law(at + h) - 2 * law(at) + law(at - h)) > 0.02 * mm * h;
    const places = Array.from({ length: Math.ceil((2 * Math.PI) / h) }, (_, i) => i * h);
    const bends = laws.map((law) => places.filter((at) => isBent(law, at)));
    // The land over the bar: covered whole, bared, gone, and as much on the way back; and shut by the exhaust edge.
    expect(bends[0]!.length).toBeGreaterThanOrEqual(8);
    const apart = (a: number, b: number): number => Math.abs(2 * Math.sin((a - b) / 2));
    for (const at of bends.flat()) expect(edges.some((edge) => apart(edge, at) < 1.01 * h)).toBe(true);
  });

  it('open by the lead at top dead centre', () => {
    const area = areaOf(flatGear(), 'admission');
    // Openings and lands are tabulated to a millionth of their largest value.
    expect(area(0)).toBeCloseTo(0.7 * 12 * mm * 0.3 * mm, 11);
  });

  it('the port of a piston valve is the circumference less the bars', () => {
    const area = areaOf(roundGear(), 'admission');
    expect(area(60 * DEGREE)).toBeCloseTo(0.7 * 0.75 * Math.PI * 14 * mm * 2 * mm, 15);
  });
});

describe('events', () => {
  it.each([
    { name: 'with laps and lead', own: {} },
    { name: 'line on line: neither laps nor lead', own: { steam_lap: 0, exhaust_lap: 0, lead: 0 } },
    { name: 'bare to the exhaust in mid-position', own: { exhaust_lap: -1 * mm } },
    { name: 'opening after dead centre', own: { lead: -0.8 * mm } },
    { name: 'never fully open', own: { port_width: 9 * mm } },
  ])('$name: as computed and as seen on the areas', ({ own }) => {
    for (const gear of [flatGear({ cavity_length: 40 * mm, ...own }), roundGear(own)])
      expect(eventDeviation(gear.events, observedEvents(gear))).toBeLessThan(1e-5);
  });

  it('of the plainest valve are the dead centres', () => {
    const { events } = flatGear({ steam_lap: 0, exhaust_lap: 0, lead: 0 });
    expect(events.admission).toBeCloseTo(0, 12);
    expect(events.cutOff).toBeCloseTo(Math.PI, 12);
    expect(events.release).toBeCloseTo(Math.PI, 12);
    expect(events.compression).toBeCloseTo(0, 12);
  });
});

describe('edges', () => {
  it.each([
    { what: 'the port cracks open to the chest', s: 2.2 },
    { what: 'the port is fully open to the chest', s: 4.2 },
    { what: 'the land on the steam side is as long as the gap is high', s: 2.195 },
    { what: 'the port cracks open to the exhaust', s: -0.5 },
    { what: 'the port is fully open to the exhaust', s: -2.5 },
    { what: 'the land on the exhaust side is as long as the gap is high', s: -0.495 },
    { what: 'the bar is covered', s: 3.5 },
  ])('$what, going and coming', ({ s }) => {
    const { edges } = flatGear();
    const angle = Math.asin(s / 5);
    for (const crossing of [angle, Math.PI - angle]) {
      const wanted = (crossing - 30 * DEGREE + 2 * Math.PI) % (2 * Math.PI);
      expect(edges.some((edge) => Math.abs(edge - wanted) < 1e-9)).toBe(true);
    }
  });
});

describe('leaks', () => {
  /** Straight slit w/L in a gap, 4 bar to 1 bar. */
  const slit = (widthOverLength: number, section: number, height: number): number =>
    gapFlow(dryAir, 1 / (widthOverLength * height ** 3), section, 4e5, 288.15, 1e5);

  it('under a flat valve in its middle position', () => {
    const gear = flatGear();
    const middle = 150 * DEGREE;
    const h = 5 * micron;
    const ends = (2 * 2) / 3;
    expect(leakFlow(gear, 'past the steam lap', middle)).toBeCloseTo(
      slit(12 / 2.2 + ends, 16 * mm * h, h),
      9,
    );
    expect(leakFlow(gear, 'past the exhaust lap', middle)).toBeCloseTo(slit(12 / 0.5, 12 * mm * h, h), 9);
    expect(leakFlow(gear, 'under the rim of the valve', middle)).toBeCloseTo(
      slit((2 * 15 + 12) / 3, 42 * mm * h, h),
      15,
    );
  });

  it('round a piston valve in its middle position, with and without a second head', () => {
    const middle = 150 * DEGREE;
    const past = (land: number): number =>
      gapFlow(
        dryAir,
        annulusResistance(14 * mm, 8 * micron, land, 1),
        Math.PI * 14 * mm * 8 * micron,
        4e5,
        288.15,
        1e5,
      );
    expect(leakFlow(roundGear(), 'past the steam lap', middle)).toBeCloseTo(past(2.2 * mm), 9);
    expect(leakFlow(roundGear(), 'past the exhaust lap', middle)).toBeCloseTo(past(0.5 * mm), 9);
    expect(roundGear().sealingGaps).toHaveLength(2);
    const headed = roundGear({ second_head: 10 * mm });
    expect(leakFlow(headed, 'past the second head', middle)).toBeCloseTo(past(10 * mm), 15);
  });

  it('grow as the land shrinks', () => {
    const gear = flatGear();
    const flows = [240, 180, 150, 0, 60].map((angle) => leakFlow(gear, 'past the steam lap', angle * DEGREE));
    for (let i = 1; i < flows.length; i += 1) expect(flows[i]).toBeGreaterThanOrEqual(flows[i - 1]!);
  });

  it('are none with a perfect fit', () => {
    expect(flatGear({ face_gap: 0 }).sealingGaps).toEqual([]);
    expect(roundGear({ clearance: { by: 'gap', gap: 0 } }).sealingGaps).toEqual([]);
  });
});

describe('driving it', () => {
  it('takes the rubbing force over twice the travel in a turn', () => {
    expect(dragWork(flatGear(), noAir)).toBeCloseTo(20 * 2 * 10 * mm, 6);
  });

  it.each([60, 240])('takes nothing where the valve turns back, an edge: %s°', (degrees) => {
    const gear = flatGear();
    expect(gear.dragTorque(degrees * DEGREE, 30, noAir)).toBeCloseTo(0, 12);
    expect(gear.edges.some((edge) => Math.abs(edge - degrees * DEGREE) < 1e-9)).toBe(true);
  });
});

describe('derived sizes', () => {
  it('are what the builder has to make and set', () => {
    const gear = flatGear();
    expect(sizeOf(gear, 'angle of advance of the eccentric') / DEGREE).toBeCloseTo(30, 12);
    expect(sizeOf(gear, 'land of the valve that covers the cylinder port') / mm).toBeCloseTo(4.7, 12);
    expect(sizeOf(gear, 'greatest opening of the port to the chest') / mm).toBeCloseTo(2, 12);
    expect(sizeOf(gear, 'greatest opening of the port to the exhaust') / mm).toBeCloseTo(2, 12);
  });
});
