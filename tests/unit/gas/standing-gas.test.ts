/** Gas that stands: how it cools in a vessel, how a shut-off volume leaks, how much water it holds, how it is quoted. */
import { describe, expect, it } from 'vitest';
import {
  enclosedCircleShapeFactor,
  radialShapeFactor,
  separateCirclesShapeFactor,
} from '../../../src/gas/gap.ts';
import { dryAir } from '../../../src/gas/gases/dry-air.ts';
import { humidityRatio, saturationPressure } from '../../../src/gas/humid-air.ts';
import { pressureThroughOrifice } from '../../../src/gas/orifice-decay.ts';
import { decayResistance, pressureThroughGap } from '../../../src/gas/pressure-decay.ts';
import { referenceVolumeFlow } from '../../../src/gas/reference-atmosphere.ts';
import { coolingTimeConstant } from '../../../src/gas/still-air-cooling.ts';
import { expectWithin } from '../../support/expect-within.ts';
import { helium } from '../../support/helium.ts';

describe('gas in a shut vessel', () => {
  const sphere = (radius: number): number => (4 / 3) * Math.PI * radius ** 3;

  it.each([dryAir, helium])('of $name cools by conduction alone where it is too small to stir', (gas) => {
    const [radius, pressure, temperature] = [1.5e-3, 1e5, 300];
    const density = pressure / (gas.specificGasConstant * temperature);
    const conductivity =
      (gas.heatCapacityAtConstantPressure * gas.viscosity(temperature)) / gas.prandtlNumber;
    // The slowest mode of conduction in a sphere dies away as exp(−π² a t/r²), a = λ/(ρ cv) at constant volume (any text).
    const slowest =
      (density * gas.heatCapacityAtConstantVolume * radius ** 2) / (Math.PI ** 2 * conductivity);
    expectWithin(coolingTimeConstant(gas, sphere(radius), pressure, temperature), slowest, 1e-12);
  });

  it('takes well over half a minute in a receiver of 50 litres at 8 bar', () => {
    // Derived by hand: ρ = 9.45 kg/m³, ν = 1.93e-6 m²/s, a = 2.71e-6 m²/s, D = 0.457 m, Ra = 6.1e9, Nu = 237, λ = 0.0258 W/(m K).
    expectWithin(coolingTimeConstant(dryAir, 0.05, 8e5, 295), 38.7, 0.01);
  });

  it('takes as long as it is wide where it stirs itself, and the cube root of the pressure longer', () => {
    const small = coolingTimeConstant(dryAir, 0.01, 4e5, 295);
    expectWithin(coolingTimeConstant(dryAir, 0.08, 4e5, 295), 2 * small, 1e-9);
    expectWithin(coolingTimeConstant(dryAir, 0.01, 8 * 4e5, 295), 2 * small, 1e-9);
  });
});

describe('a shut-off volume', () => {
  const ROOM = 1e5;

  it('gives back the resistance of the gap that it leaks through', () => {
    const [volume, viscosity, resistance] = [2e-4, 1.8e-5, 4e13];
    const constant = (12 * viscosity * resistance * volume) / ROOM;
    for (const time of [0.1 * constant, constant, 3 * constant]) {
      const to = pressureThroughGap(6e5, ROOM, constant, time);
      expectWithin(
        decayResistance({ volume, from: 6e5, to, against: ROOM, time }, viscosity),
        resistance,
        1e-9,
      );
    }
  });

  it('falls through a gap at first as the law of the gap says', () => {
    const constant = 20;
    const time = 1e-4;
    const fall = (6e5 - pressureThroughGap(6e5, ROOM, constant, time)) / time;
    // dp/dt = −(p² − p₀²)/(24 μ Z V), and 12 μ Z V = τ p₀.
    expectWithin(fall, (6e5 ** 2 - ROOM ** 2) / (2 * constant * ROOM), 1e-4);
  });

  it('falls alike through an orifice whether or not it has come from higher up', () => {
    const decay = { gas: dryAir, areaPerVolume: 1e-4, temperature: 290, against: ROOM };
    const middle = pressureThroughOrifice(decay, 4e5, 55);
    expect(middle / ROOM).toBeGreaterThan(1.1);
    expect(middle / ROOM).toBeLessThan(1.8);
    expectWithin(pressureThroughOrifice(decay, middle, 5), pressureThroughOrifice(decay, 4e5, 60), 1e-9);
  });

  it('takes no air in through an orifice', () => {
    const decay = { gas: dryAir, areaPerVolume: 1e-4, temperature: 290, against: ROOM };
    expect(pressureThroughOrifice(decay, 0.9 * ROOM, 1)).toBe(ROOM);
  });
});

it('full air at 20 °C holds 14.7 g of water in a kilogram of dry air', () => {
  // Psychrometric tables at 1013 mbar, from memory.
  expectWithin(humidityRatio(saturationPressure(293.15), 101_325), 14.7e-3, 0.003);
});

it('air is quoted as air of 1.185 kg/m³, another gas as its own volume', () => {
  expectWithin(referenceVolumeFlow(dryAir, 1.185), 1, 1e-12);
  // 4.0026 g/mol, and 24.37 L/mol at 20 °C and 100 kPa.
  expectWithin(referenceVolumeFlow(helium, 4.0026e-3), 24.37e-3, 1e-3);
});

it('circles in one another with one centre are a ring, and side by side pass alike either way', () => {
  expectWithin(radialShapeFactor(3, 7), enclosedCircleShapeFactor(3, 7, 0), 1e-12);
  expectWithin(radialShapeFactor(1, Math.E), 2 * Math.PI, 1e-12);
  expectWithin(separateCirclesShapeFactor(2, 3, 9), separateCirclesShapeFactor(3, 2, 9), 1e-12);
});
