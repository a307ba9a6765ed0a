/**
 * What the kernel has of its own beside src: the laws of gases, of the crank and of its tables say the same, to the last bit
 * where the formula is the same.
 */
import { describe, expect, it } from 'vitest';
import { chokedFactor, subsonicShare, subsonicShareSlope } from '../../../src/gas/conductance.ts';
import * as gap from '../../../src/gas/gap.ts';
import { roundedRoot, roundedRootSlope } from '../../../src/gas/gas.ts';
import { nozzleFunction, nozzleFunctionSlope } from '../../../src/gas/nozzle.ts';
import { gases } from '../../../src/gas/registry.ts';
import * as crank from '../../../src/kernel/crank.ts';
import * as laws from '../../../src/kernel/gas-laws.ts';
import { FIRST_FREE } from '../../../src/kernel/fixed-places.ts';
import { at } from '../../../src/kernel/memory.ts';
import { exponential, setSineCosine, wrappedAngle } from '../../../src/kernel/tables.ts';
import { engineImage } from '../../../src/model/engine-image.ts';
import type { Engine } from '../../../src/model/engine.ts';
import { engineSystem } from '../../../src/model/system.ts';
import { exp } from '../../../src/numerics/elementary/exponential.ts';
import { cos, sin } from '../../../src/numerics/elementary/trigonometric.ts';
import { writeSineCosine } from '../../../src/numerics/sine-cosine.ts';
import * as positions from '../../../src/parts/crank-positions.ts';
import * as train from '../../../src/parts/crank-train.ts';
import { seatedPlain } from '../../support/both-kernels.ts';
import { engineWithGas, systemOf } from '../../support/drive.ts';
import { helium } from '../../support/helium.ts';
import { noise } from '../../support/noise.ts';
import { referenceSpec } from '../../support/reference-engine.ts';
import { shipped } from '../../support/shipped.ts';

function seat(engine: Engine): void {
  seatedPlain({ engine: engineImage(engine, engineSystem(engine).slots).words });
}

const evenly = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count + 1 }, (_, i) => from + (i * (to - from)) / count);

/** By the kernel: it writes both into words of its memory. */
function sineAndCosineOf(angle: number): readonly [number, number] {
  setSineCosine(angle, FIRST_FREE, FIRST_FREE + 1);
  return [at(FIRST_FREE, 0), at(FIRST_FREE, 1)];
}

/** Both laws over a range, value by value. */
function expectSame(xs: readonly number[], kernel: (x: number) => number, ours: (x: number) => number): void {
  expect(xs.map(kernel)).toEqual(xs.map(ours));
}

describe.each([...gases, helium].map((gas) => [gas.name, gas] as const))('the laws of %s', (_name, gas) => {
  const engine = engineWithGas(referenceSpec(), gas);
  const critical = gas.criticalPressureRatio;
  const ratios = [...evenly(0, 1, 1000), critical, critical * (1 - 1e-12), 1 - 1e-9, 1 - 1e-16];

  it('of flow through a nozzle', () => {
    seat(engine);
    expectSame(ratios, laws.nozzleFunction, (x) => nozzleFunction(gas, x));
    expectSame(ratios, laws.nozzleFunctionSlope, (x) => nozzleFunctionSlope(gas, x));
  });

  it.each([0.1, 0.25, 0.5])('of a fitting with b = %d', (b) => {
    seat(engine);
    expect(chokedFactor(gas, { sonicConductance: 1, criticalPressureRatio: b })).toBeGreaterThan(0);
    expectSame(
      ratios,
      (x) => laws.subsonicShare(b, x),
      (x) => subsonicShare(gas, b, x),
    );
    expectSame(
      ratios,
      (x) => laws.subsonicShareSlope(b, x),
      (x) => subsonicShareSlope(gas, b, x),
    );
  });

  it('of the flow in a gap', () => {
    seat(engine);
    expectSame(evenly(20, 3000, 500), laws.laminarFactor, (t) => gap.laminarFactor(gas, t));
    const [resistance, loss] = [1e14 * gap.laminarFactor(gas, 290), 290 * gap.gapLoss(gas, 1e-7)];
    for (const drive of [0, 1, 1e6, 1e12])
      for (const most of [0, 1e-6, Infinity]) {
        expect(laws.drivenFlow(resistance, loss, drive, most)).toBe(
          gap.drivenFlow(resistance, loss, drive, most),
        );
        expect(laws.drivenFlowSlope(resistance, loss, drive)).toBe(
          gap.drivenFlowSlope(resistance, loss, drive),
        );
      }
  });
});

it('the square root is rounded off alike', () => {
  const near = [0, 1e-300, 1e-9, 1e-4, 2e-4, 1e-2, 1];
  for (const rounding of [2e-4, 1e-8, 1]) {
    expectSame(
      near,
      (q) => laws.roundedRoot(q, rounding),
      (q) => roundedRoot(q, rounding),
    );
    expectSame(
      near,
      (q) => laws.roundedRootSlope(q, rounding),
      (q) => roundedRootSlope(q, rounding),
    );
  }
});

describe.each([
  ['slider-crank', referenceSpec()],
  ['cylinder that rocks', shipped('fair-boat-oscillating.yaml')],
])('the way of the piston of a %s', (_name, spec) => {
  const { engine } = systemOf(spec);
  const angles = evenly(-7, 7, 700);

  it.each([
    ['pistonTravel', (_s: number, c: number, reached: number) => crank.pistonTravel(c, reached)],
    ['pistonTravelRate', crank.pistonTravelRate],
    ['pistonTravelCurvature', crank.pistonTravelCurvature],
  ] as const)('by %s', (law, inKernel) => {
    seat(engine);
    expectSame(
      angles,
      (angle) => inKernel(sin(angle), cos(angle), crank.reach(sin(angle), cos(angle))),
      (angle) => train[law](engine.crank, sin(angle), cos(angle)),
    );
  });
});

describe('the tables of the kernel', () => {
  const { uniform } = noise(3);
  const FULL_TURN = 2 * Math.PI;
  const some = Array.from({ length: 3000 }, () => 40 * (uniform() - 0.5));
  const edges = [-3, -2, -1, 0, 1, 2, 3].flatMap((turns) =>
    [0, -1e-15, 1e-15].map((off) => turns * FULL_TURN + off),
  );
  const angles = [...some, ...edges, -0, 1e5, -1e5, 1e9];

  it('have sine and cosine as src/numerics/sine-cosine.ts has them', () => {
    seatedPlain({});
    const [sine, cosine] = [new Float64Array(1), new Float64Array(1)];
    for (const angle of angles) {
      writeSineCosine(angle, sine, cosine, 0);
      expect([angle, ...sineAndCosineOf(angle)]).toEqual([angle, sine[0], cosine[0]]);
    }
  });

  it('have sine and cosine right to 3e-16 of a turn or two', () => {
    for (const angle of evenly(-2 * FULL_TURN, 2 * FULL_TURN, 5000)) {
      // Turns are taken off with their own rounding.
      const allowed = Math.abs(angle) < FULL_TURN ? 3e-16 : 2e-15;
      const [sine, cosine] = sineAndCosineOf(angle);
      expect(Math.abs(sine - sin(angle))).toBeLessThan(allowed);
      expect(Math.abs(cosine - cos(angle))).toBeLessThan(allowed);
    }
  });

  it('have the exponential of all that friction asks for', () => {
    expectSame([...evenly(-6.5 * 6.5, 0, 20_000), -1e-300, -43.999], exponential, exp);
  });

  it('wrap angles as src/parts/crank-positions.ts does', () => {
    expectSame([...angles, Infinity, NaN], wrappedAngle, positions.wrappedAngle);
  });
});
