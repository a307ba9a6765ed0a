/** Flow laws at their limits, and their slopes against difference quotients. */
import { describe, expect, it } from 'vitest';
import {
  conductanceFlow,
  conductanceOfArea,
  subsonicShare,
  subsonicShareSlope,
} from '../../../src/gas/conductance.ts';
import { drivenFlow, drivenFlowSlope, gapFlow } from '../../../src/gas/gap.ts';
import { roundedRoot, roundedRootSlope } from '../../../src/gas/gas.ts';
import { dryAir } from '../../../src/gas/gases/dry-air.ts';
import { areaInSeries, chokedFlow, nozzleFunction, nozzleFunctionSlope } from '../../../src/gas/nozzle.ts';
import { gasNamed } from '../../../src/gas/registry.ts';
import { expectWithin } from '../../support/expect-within.ts';
import { helium } from '../../support/helium.ts';

const ROOM = 101_325;

describe.each([dryAir, helium])('$name', (gas) => {
  it('chokes in an element as in a nozzle that passes as much air', () => {
    const area = 3e-6;
    const element = { sonicConductance: conductanceOfArea(area), criticalPressureRatio: 0.3 };
    expectWithin(conductanceFlow(gas, element, 7e5, 350, 1e5), chokedFlow(gas, area, 7e5, 350), 2e-8);
  });

  it.each([280, 500])(
    'passes 0.8 of a choked nozzle through a gap too short to rub, at %d K',
    (temperature) => {
      const section = 2e-7;
      const flow = gapFlow(gas, 1, section, 6e5, temperature, ROOM);
      expectWithin(flow, 0.8 * chokedFlow(gas, section, 6e5, temperature), 1e-12);
    },
  );

  it.each([0.6, 0.9, 0.999, 0.999_99])(
    'has the slope of its nozzle flow at a pressure ratio of %d',
    (ratio) => {
      const step = 1e-7;
      const quotient = (nozzleFunction(gas, ratio + step) - nozzleFunction(gas, ratio - step)) / (2 * step);
      expectWithin(nozzleFunctionSlope(gas, ratio), quotient, 1e-5);
    },
  );

  it('does not answer to what lies behind a choked nozzle', () => {
    expect(nozzleFunctionSlope(gas, 0.4)).toBe(0);
  });

  it.each([0.35, 0.7, 0.9999])('has the slope of an element at a pressure ratio of %d', (ratio) => {
    const step = 1e-7;
    const share = (at: number): number => subsonicShare(gas, 0.3, at);
    expectWithin(
      subsonicShareSlope(gas, 0.3, ratio),
      (share(ratio + step) - share(ratio - step)) / (2 * step),
      1e-5,
    );
  });

  it('does not answer to what lies behind a choked element', () => {
    expect(subsonicShareSlope(gas, 0.3, 0.2)).toBeCloseTo(0, 15);
  });
});

it.each([0, 1e-5, 2e-4, 0.01])('the rounded root has its slope at %d', (q) => {
  const step = 1e-8;
  const quotient = (roundedRoot(q + step, 2e-4) - roundedRoot(q - step, 2e-4)) / (2 * step);
  expectWithin(roundedRootSlope(q, 2e-4), quotient, 1e-6);
});

it.each([
  { what: 'rubbing counts', laminar: 1e14, loss: 1e16 },
  { what: 'the mouths count', laminar: 1e10, loss: 1e19 },
])('a gap answers to its drive where $what', ({ laminar, loss }) => {
  const drive = 2e11;
  const flow = (at: number): number => drivenFlow(laminar, loss, at, Infinity);
  const quotient = (flow(drive * (1 + 1e-6)) - flow(drive * (1 - 1e-6))) / (2e-6 * drive);
  expectWithin(drivenFlowSlope(laminar, loss, drive), quotient, 1e-6);
});

it('nothing passes a gap without a section, not even at equal pressures', () => {
  expect(gapFlow(dryAir, 1e13, 0, ROOM, 290, ROOM)).toBe(0);
  expect(gapFlow(dryAir, 1e13, 0, 5e5, 290, ROOM)).toBe(0);
});

it('shut throttles one behind the other stay shut, and open ones pass less than either', () => {
  expect(areaInSeries(0, 0)).toBe(0);
  expect(areaInSeries(0, 2e-6)).toBe(0);
  expect(areaInSeries(2e-6, 0)).toBe(0);
  expectWithin(areaInSeries(3e-6, 4e-6), 2.4e-6, 1e-12);
});

it('knows its gases by name, and only those', () => {
  expect(gasNamed('dry air').name).toBe('dry air');
  expect(() => gasNamed('phlogiston')).toThrow('phlogiston');
});
