/** Valve lifted by the piston: openings at known travels, events about the dead centres, seat leak, work of lifting. */
import { describe, expect, it } from 'vitest';
import { gapFlow, slitResistance } from '../../../../src/gas/gap.ts';
import { nozzleFlow } from '../../../../src/gas/nozzle.ts';
import { dryAir } from '../../../../src/gas/gases/dry-air.ts';
import { angleAtStrokeFraction, pistonTravel } from '../../../../src/parts/crank-train.ts';
import { pistonLiftedValve } from '../../../../src/parts/valve-gears/piston-lifted-valve.ts';
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
const TURN = 2 * Math.PI;

/** Stroke 60 mm. */
const own = {
  shape: 'flat poppet' as 'flat poppet' | 'ball',
  seat_diameter: 8 * mm,
  valve_diameter: 11 * mm,
  pin_diameter: 3 * mm,
  lift: 3 * mm,
  discharge_coefficient: 0.65,
  spring_force: 12,
  rise: undefined as number | undefined,
  seat_gap: 0,
  seat_width: 0.3 * mm,
  exhaust: { hole_count: 8, hole_diameter: 5 * mm, edge_from_top: 52 * mm },
};

const gearWith = (values: Partial<typeof own> = {}) =>
  pistonLiftedValve.choose({ ...own, ...values }).build(context);

/** Crank angle on the way out at which the piston has come so far. */
const angleAt = (travel: number): number => angleAtStrokeFraction(context.crank, travel / (60 * mm));

describe('admission', () => {
  const area = areaOf(gearWith(), 'admission');

  it.each([
    { name: 'at top dead centre, limited by the bore', travel: 0, expected: (Math.PI * (64 - 9)) / 4 },
    { name: 'a millimetre and a half down', travel: 1.5, expected: 8 * Math.PI * 1.5 },
    { name: 'a tenth of a millimetre before it shuts', travel: 2.9, expected: 8 * Math.PI * 0.1 },
    { name: 'shut', travel: 3.01, expected: 0 },
    { name: 'far down', travel: 40, expected: 0 },
  ])('$name', ({ travel, expected }) => {
    const angle = angleAt(travel * mm);
    expect(area(angle) / 1e-6).toBeCloseTo(0.65 * expected, 4);
    expect(area(-angle) / 1e-6).toBeCloseTo(0.65 * expected, 4);
  });
});

describe('exhaust', () => {
  const area = areaOf(gearWith(), 'exhaust');
  const hole = Math.PI * 2.5 ** 2;

  it.each([
    { name: 'covered', travel: 51.9, expected: 0 },
    { name: 'half uncovered', travel: 54.5, expected: hole / 2 },
    { name: 'whole', travel: 57, expected: hole },
    { name: 'at bottom dead centre', travel: 60, expected: hole },
  ])('$name', ({ travel, expected }) => {
    const angle = angleAt(travel * mm);
    expect(area(angle) / 1e-6).toBeCloseTo(0.65 * 8 * expected, 3);
    expect(area(-angle) / 1e-6).toBeCloseTo(0.65 * 8 * expected, 3);
  });

  it('low holes are never quite uncovered', () => {
    const gear = gearWith({ exhaust: { ...own.exhaust, edge_from_top: 57.5 * mm } });
    expect(areaOf(gear, 'exhaust')(Math.PI) / 1e-6).toBeCloseTo(0.65 * 8 * (hole / 2), 4);
    expect(sizeOf(gear, 'greatest height of the holes that is uncovered') / mm).toBeCloseTo(2.5, 12);
  });
});

describe('events', () => {
  it.each([
    { name: 'a poppet', values: {} },
    { name: 'a ball', values: { shape: 'ball' as const } },
    { name: 'so high a pin that both are open at once', values: { lift: 55 * mm } },
  ])('$name: as computed and as seen on the areas', ({ values }) => {
    const gear = gearWith(values);
    expect(eventDeviation(gear.events, observedEvents(gear))).toBeLessThan(1e-6);
  });

  it('lie alike about the dead centres', () => {
    const { admission, cutOff, release, compression } = gearWith().events;
    expect(admission + cutOff).toBeCloseTo(TURN, 12);
    expect(release + compression).toBeCloseTo(TURN, 12);
    expect(pistonTravel(context.crank, Math.sin(cutOff), Math.cos(cutOff)) / mm).toBeCloseTo(3, 10);
    expect(pistonTravel(context.crank, Math.sin(release), Math.cos(release)) / mm).toBeCloseTo(52, 10);
  });
});

describe('the seat', () => {
  it('is tight unless told otherwise', () => {
    expect(gearWith().sealingGaps).toEqual([]);
  });

  it('leaks as a slit all round', () => {
    const gear = gearWith({ seat_gap: 3 * micron });
    const rim = Math.PI * 8 * mm;
    const flow = gapFlow(
      dryAir,
      slitResistance(0.3 * mm, rim, 3 * micron),
      rim * 3 * micron,
      4e5,
      288.15,
      1e5,
    );
    expect(leakFlow(gear, 'past the shut valve seat', 1)).toBeCloseTo(flow, 15);
  });
});

describe('as a check valve', () => {
  const T = 288.15;
  /** Flow from the chest into the cylinder [kg/s]. */
  const flow = (gear: ReturnType<typeof gearWith>, angle: number, chest: number, cylinder: number): number =>
    gear.ports[0]!.massFlow(angle, chest, T, cylinder, T, 30);
  const loose = gearWith({ spring_force: 0 });
  const bore = (Math.PI / 4) * (8 * mm) ** 2;

  it('stays shut, pin away, while the chest holds it', () => {
    expect(flow(loose, 1, 4e5, 1e5)).toBe(0);
    expect(flow(loose, 1, 4e5, 4e5)).toBe(0);
  });

  it('blows back wide open when the cylinder stands well above the chest', () => {
    const open = 0.65 * Math.min(Math.PI * 8 * mm * 3 * mm, (Math.PI / 4) * ((8 * mm) ** 2 - (3 * mm) ** 2));
    expect(flow(loose, 1, 3e5, 4e5)).toBe(-nozzleFlow(dryAir, open, 4e5, T, 3e5));
  });

  it('waits for a spring to give way', () => {
    const sprung = gearWith({ spring_force: 10 });
    const cracking = 10 / bore;
    expect(flow(sprung, 1, 3e5, 3e5 + 0.999 * cracking)).toBe(0);
    expect(flow(sprung, 1, 3e5, 3e5 + 1.1 * cracking)).toBeLessThan(0);
    expect(flow(sprung, 1, 3e5, 3e5 + 2 * cracking)).toBe(flow(loose, 1, 3e5, 3e5 + 2 * cracking));
  });

  it('rises no further than it may', () => {
    const held = gearWith({ spring_force: 0, rise: 0.5 * mm });
    expect(flow(held, 1, 3e5, 4e5)).toBe(
      -nozzleFlow(dryAir, 0.65 * Math.PI * 8 * mm * 0.5 * mm, 4e5, T, 3e5),
    );
  });

  it('passes what the pin lets pass, the other way and when the pin holds it higher', () => {
    const held = gearWith({ spring_force: 0, rise: 0.5 * mm });
    expect(flow(held, 0, 3e5, 4e5)).toBe(flow(loose, 0, 3e5, 4e5));
    expect(flow(loose, 0, 4e5, 3e5)).toBe(-flow(loose, 0, 3e5, 4e5));
  });

  it('opens without a jump', () => {
    const flows = Array.from({ length: 401 }, (_, i) => flow(loose, 1, 3e5, 3e5 + 20 * i));
    const steps = flows.slice(1).map((q, i) => flows[i]! - q);
    expect(Math.min(...steps)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...steps)).toBeLessThan(0.012 * -flows.at(-1)!);
  });
});

describe('lifting', () => {
  it("takes the spring's force over the lift once a turn", () => {
    expect(dragWork(gearWith(), noAir, 200_000)).toBeCloseTo(12 * 3 * mm, 5);
  });

  it('takes what the chest presses on the bore above the cylinder besides', () => {
    const work = dragWork(gearWith(), { ...noAir, chest: 4e5, cylinder: 1e5 }, 200_000);
    expect(work).toBeCloseTo((12 + 3e5 * (Math.PI / 4) * (8 * mm) ** 2) * 3 * mm, 4);
  });

  it('takes nothing when the cylinder carries the valve', () => {
    expect(dragWork(gearWith(), { ...noAir, chest: 1e5, cylinder: 4e5 })).toBe(0);
  });

  it('takes it on the way up only', () => {
    const gear = gearWith();
    expect(gear.dragTorque(5 * DEGREE, 30, noAir)).toBe(0);
    expect(gear.dragTorque(-5 * DEGREE, 30, noAir)).toBeGreaterThan(0);
    expect(gear.dragTorque(-60 * DEGREE, 30, noAir)).toBe(0);
  });
});
