/** The equations of motion where they can be said in closed form. */
import { describe, expect, it } from 'vitest';
import { initialState } from '../../../src/model/initial-state.ts';
import { SLOT, slotsFor } from '../../../src/model/slots.ts';
import { pistonTravelRate } from '../../../src/parts/crank-train.ts';
import { port } from '../../../src/parts/passage.ts';
import { systemOf } from '../../support/drive.ts';
import { constantLoad, holeLeak, inertia, referenceSpec, spoolGear } from '../../support/reference-engine.ts';

const system = systemOf(referenceSpec());
const { engine, slots } = system;
const [end] = engine.ends;
const ROOM = engine.atmosphere.pressure;

/** A state at an angle with the cylinder at a pressure, at room temperature. */
function stateAt(angle: number, speed: number, pressure: number): Float64Array {
  const y = initialState(system, angle, speed);
  y[slots.mass(1)]! *= pressure / ROOM;
  y[slots.energy(1)]! *= pressure / ROOM;
  return y;
}

function slopesOf(direction: -1 | 0 | 1, y: Float64Array): Float64Array {
  const slopes = new Float64Array(system.dimension);
  system.timeSlopes(direction, y, slopes);
  return slopes;
}

describe('the slots', () => {
  it.each([
    [2, 3, [2]],
    [14, 60, [3, 7, 59]],
  ])(
    'of %i volumes and %i passages are each of their own, totals behind the rest',
    (volumes, passages, leaks) => {
      const own = slotsFor(volumes, passages, leaks);
      const { firstTotal, dimension, mass, energy, passageMass, passageWaste, ...totals } = own;
      const gas = Array.from({ length: volumes }, (_, i) => [mass(i), energy(i)]).flat();
      const through = [
        ...Array.from({ length: passages }, (_, i) => passageMass(i)),
        ...leaks.map((leak) => passageWaste(leak)),
      ];
      expect(() => passageWaste(1)).toThrow('passage 1 is no leak');
      const physical = [...Object.values(SLOT), ...gas];
      const all = [...physical, ...Object.values(totals), ...through].sort((a, b) => a - b);
      expect(all).toEqual(Array.from({ length: dimension }, (_, i) => i));
      expect(Math.max(...physical)).toBe(firstTotal - 1);
    },
  );
});

describe('the engine before the air is turned on', () => {
  it.each([0, 0.7, 3, 5])('at %f rad is full of room air, and nothing has been counted', (angle) => {
    const y = initialState(system, angle, 0);
    const { pressure, temperature } = system.observe(y);
    for (const place of [engine.chest, end.place]) {
      expect(pressure[place]! / ROOM).toBeCloseTo(1, 12);
      expect(temperature[place]! / engine.atmosphere.temperature).toBeCloseTo(1, 12);
    }
    expect(y.slice(slots.firstTotal).every((total) => total === 0)).toBe(true);
  });
});

describe('the torque', () => {
  it('of the gas is the gauge pressure on the piston times the lever', () => {
    const { gasTorque } = system.observe(stateAt(1, 0, 3e5));
    const lever = pistonTravelRate(engine.crank, Math.sin(1), Math.cos(1));
    expect(gasTorque / ((3e5 - ROOM) * end.area * lever)).toBeCloseTo(1, 12);
  });

  it('of the gas is none at either dead centre, and against the motion on the way back', () => {
    expect(system.observe(stateAt(0, 0, 3e5)).gasTorque).toBe(0);
    expect(Math.abs(system.observe(stateAt(Math.PI, 0, 3e5)).gasTorque)).toBeLessThan(1e-12);
    expect(system.observe(stateAt(4, 0, 3e5)).gasTorque).toBeLessThan(0);
  });

  it('of the inertia forces does no work over a turn', () => {
    const degrees = Array.from({ length: 360 }, (_, i) => (i * Math.PI) / 180);
    const torques = degrees.map((angle) => system.observe(stateAt(angle, 30, ROOM)).inertiaTorque);
    const mean = torques.reduce((sum, torque) => sum + torque) / 360;
    expect(Math.abs(mean)).toBeLessThan(1e-12 * Math.max(...torques));
    expect(Math.max(...torques)).toBeGreaterThan(0.1);
  });
});

describe('the crank', () => {
  const y = stateAt(1, 5, 3e5);

  it('is driven by the gas and held by friction, gear and load', () => {
    const now = system.observe(y);
    const resisting = now.bearingTorque + now.pistonTorque + now.gearTorque + now.loadTorque;
    const [driving, inertiaNow] = [now.gasTorque + now.inertiaTorque, now.momentOfInertia];
    expect(slopesOf(1, y)[SLOT.speed]).toBeCloseTo((driving - resisting) / inertiaNow, 12);
    expect(slopesOf(-1, y)[SLOT.speed]).toBeCloseTo((driving + resisting) / inertiaNow, 12);
  });

  it('stands still at rest while the air flows on', () => {
    const atRest = stateAt(1, 0, 3e5);
    const slopes = slopesOf(0, atRest);
    expect(slopes[SLOT.crankAngle]).toBe(0);
    expect(slopes[SLOT.speed]).toBe(0);
    expect(slopes[SLOT.time]).toBe(1);
    expect(slopes[slots.mass(0)]).not.toBe(0);
  });

  it('turning backwards still loses work to friction', () => {
    const slopes = slopesOf(-1, stateAt(1, -5, ROOM));
    for (const slot of [slots.bearingWork, slots.pistonWork, slots.gearWork, slots.loadWork])
      expect(slopes[slot]).toBeGreaterThan(0);
  });

  it('with an immense flywheel keeps its speed', () => {
    const heavy = systemOf(referenceSpec({ flywheel: inertia(1e5), load: constantLoad(10) }));
    const slopes = new Float64Array(heavy.dimension);
    heavy.timeSlopes(1, initialState(heavy, 1, 5), slopes);
    expect(Math.abs(slopes[SLOT.speed]!)).toBeLessThan(2e-4);
  });
});

describe('a trial state outside the physical range', () => {
  it.each([
    ['no air', 0, 100],
    ['less than no air', -1e-5, 100],
    ['no energy', 1e-4, 0],
    ['less than no energy', 1e-4, -50],
  ])('of %s gives finite slopes', (_name, mass, energy) => {
    const y = stateAt(1, 5, 3e5);
    y[slots.mass(1)] = mass;
    y[slots.energy(1)] = energy;
    expect(slopesOf(1, y).every(Number.isFinite)).toBe(true);
  });
});

describe('air that does no work', () => {
  const ENTERS = 1e-6;
  const LEAVES = 2e-6;

  /** Slopes with ports held open at some areas, a leak into the cylinder, and pressure falling from place to place. */
  function wasted(admissionArea: number, exhaustArea: number) {
    const valve_gear = spoolGear({ clearance: 0 });
    const held: typeof valve_gear = {
      ...valve_gear,
      build: (context) => {
        const gear = valve_gear.build(context);
        const area = { admission: admissionArea, exhaust: exhaustArea };
        return {
          ...gear,
          ports: gear.ports.map((own) => port(context.gas, own.role, own, () => area[own.role])),
        };
      },
    };
    const open = systemOf(referenceSpec({ valve_gear: held, leaks: [holeLeak('chest to cylinder', 1e-3)] }));
    const y = initialState(open, 1, 5);
    for (const slot of [slots.mass(0), slots.energy(0)]) y[slot]! *= 4;
    for (const slot of [slots.mass(1), slots.energy(1)]) y[slot]! *= 2;
    const slopes = new Float64Array(open.dimension);
    open.timeSlopes(1, y, slopes);
    const [, admitted, out, leaked] = open.engine.passages.map((_, i) => slopes[open.slots.passageMass(i)]!);
    const blownThrough = slopes[open.slots.blowThrough]!;
    const leakedThrough = slopes[open.slots.passageWaste(3)]!;
    return { blownThrough, leakedThrough, admitted: admitted!, exhausted: out!, leaked: leaked! };
  }

  it('is what goes straight through two open ports, and the leak that finds room beside it', () => {
    const { blownThrough, leakedThrough, admitted, exhausted, leaked } = wasted(ENTERS, LEAVES);
    expect(blownThrough).toBe(Math.min(admitted, exhausted));
    expect(leakedThrough).toBe(Math.min(leaked, exhausted - blownThrough));
  });

  it('is the leak alone while the admission is shut', () => {
    const { blownThrough, leakedThrough, leaked } = wasted(0, LEAVES);
    expect(blownThrough).toBe(0);
    expect(leaked).toBeGreaterThan(0);
    expect(leakedThrough).toBe(leaked);
  });

  it('is nothing while the exhaust is shut', () => {
    const { blownThrough, leakedThrough } = wasted(ENTERS, 0);
    expect(blownThrough).toBe(0);
    expect(leakedThrough).toBe(0);
  });
});
