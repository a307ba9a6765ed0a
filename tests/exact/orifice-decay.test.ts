/** A shut-off volume that empties through an orifice, in closed form, against stepping through the nozzle law itself. */
import { describe, expect, it } from 'vitest';
import { dryAir } from '../../src/gas/gases/dry-air.ts';
import { nozzleFlow } from '../../src/gas/nozzle.ts';
import { pressureThroughOrifice } from '../../src/gas/orifice-decay.ts';
import { expectWithin } from '../support/expect-within.ts';
import { helium } from '../support/helium.ts';

const VOLUME = 1e-4;
const AREA = 1e-8;
const ROOM = 101_325;

describe.each([dryAir, helium])('$name', (gas) => {
  it('falls as small steps of the nozzle law make it fall, choked and below', () => {
    const temperature = 290;
    const slope = (p: number): number =>
      (-gas.specificGasConstant * temperature * nozzleFlow(gas, AREA, p, temperature, ROOM)) / VOLUME;
    const decay = { gas, areaPerVolume: AREA / VOLUME, temperature, against: ROOM };
    let p = 4e5;
    const h = 0.01;
    const seconds = gas === dryAir ? 70 : 26;
    for (let i = 1; i <= seconds / h; i += 1) {
      p += h * slope(p + (h / 2) * slope(p));
      if (i % 100 === 0) expectWithin(pressureThroughOrifice(decay, 4e5, i * h), p, 2e-5);
    }
    expect(p / ROOM).toBeLessThan(1.15);
  });

  it('reaches the room and stays there', () => {
    const decay = { gas, areaPerVolume: AREA / VOLUME, temperature: 290, against: ROOM };
    expect(pressureThroughOrifice(decay, 4e5, 1e4)).toBe(ROOM);
    expect(pressureThroughOrifice(decay, ROOM, 1)).toBe(ROOM);
  });
});
