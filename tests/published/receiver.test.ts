/**
 * Receiver and compressor: the draw-down identity t = V (p₁ − p₂)/(C p_room), C the shortfall of free air (seen:
 * compressed-air sizing sheets, aerzenx.wixsite.com), through the verdict on a settled engine.
 */
import { describe, expect, it } from 'vitest';
import { anrVolumeFlow } from '../../src/gas/reference-atmosphere.ts';
import { compressorVerdict } from '../../src/run/compressor-verdict.ts';
import { steadyCompressor } from '../support/compressors.ts';
import { expectWithin } from '../support/expect-within.ts';
import { idealEngine } from '../support/ideal-engine.ts';

const PSI = 6894.757;
const FOOT = 0.3048;
const BAR = 1e5;
const LITRE = 1e-3;
const ROOM = 101_325;
const ROOM_DENSITY = ROOM / (287.05 * 288.15);

/** Minutes from full until the receiver can no longer hold the supply pressure; gauge pressures over a room. */
function minutesUntilSag(shed: {
  readonly room: number;
  readonly volume: number;
  readonly cutOut: number;
  readonly cutIn: number;
  readonly supply: number;
  /** Volumes of room air per second. */
  readonly demand: number;
  readonly delivery: number;
}): number | undefined {
  const { room, demand } = shed;
  const spec = idealEngine({
    atmosphere: { pressure: room, temperature: 288.15 },
    supply: { pressure: shed.supply + room },
  });
  const compressor = steadyCompressor({
    free_air_delivery: shed.delivery,
    receiver_volume: shed.volume,
    cut_in: shed.cutIn + room,
    cut_out: shed.cutOut + room,
    duty_rating: 0.5,
  });
  const density = room / (287.05 * 288.15);
  return compressorVerdict(compressor, spec, demand * density).minutesUntilSag;
}

describe('a receiver that is drawn down', () => {
  it('24.2 ft³ last 5 min at 50 scfm, 40 made up, from 110 to 80 psi with the room at 14.5 (seen)', () => {
    // scribd.com/document/682782639, "tank selection"; volume printed to three figures.
    const cfm = FOOT ** 3 / 60;
    const minutes = minutesUntilSag({
      room: 14.5 * PSI,
      volume: 24.2 * FOOT ** 3,
      cutOut: 110 * PSI,
      cutIn: 110 * PSI,
      supply: 80 * PSI,
      demand: 50 * cfm,
      delivery: 40 * cfm,
    });
    expectWithin(minutes!, 5, 0.002);
  });

  it.each([
    { supply: 0, seconds: 113.7 },
    { supply: 6 * BAR, seconds: 28.4 },
  ])(
    '24 litres give 100 L/min from 8 bar gauge to $supply Pa for $seconds s (derived)',
    ({ supply, seconds }) => {
      // The same sum as pumping up with 100 L/min; here the compressor is off all the way down.
      const minutes = minutesUntilSag({
        room: ROOM,
        volume: 24 * LITRE,
        cutOut: 8 * BAR,
        cutIn: supply,
        supply,
        demand: (100 * LITRE) / 60,
        delivery: (50 * LITRE) / 60,
      });
      expectWithin(minutes! * 60, seconds, 1e-3);
    },
  );

  it('goes on more slowly once the compressor has cut in', () => {
    const shed = { room: ROOM, volume: 24 * LITRE, cutOut: 8 * BAR, supply: 4 * BAR };
    const flows = { demand: (100 * LITRE) / 60, delivery: (75 * LITRE) / 60 };
    const minutes = minutesUntilSag({ ...shed, ...flows, cutIn: 6 * BAR });
    // Two bar at 100 L/min, then two bar at 25 L/min: five times 28.43 s.
    expectWithin(minutes! * 60, 5 * 28.43, 1e-3);
  });
});

describe('duty of a compressor that keeps up', () => {
  it('is demand over delivery, both as the same free air (identity seen)', () => {
    const spec = idealEngine({});
    const compressor = steadyCompressor({
      free_air_delivery: (150 * LITRE) / 60,
      receiver_volume: 50 * LITRE,
      cut_in: 7 * BAR,
      cut_out: 9 * BAR,
      duty_rating: 0.5,
    });
    const demand = ((60 * LITRE) / 60) * ROOM_DENSITY;
    const verdict = compressorVerdict(compressor, spec, demand);
    expect(verdict.keepsUp).toBe(true);
    expect(verdict.minutesUntilSag).toBeUndefined();
    expectWithin(verdict.duty, 0.4, 1e-9);
    expectWithin(verdict.demandAnr, anrVolumeFlow(demand), 1e-12);
    expectWithin(verdict.demandAnr / verdict.deliveryAnr, 0.4, 1e-9);
  });
});
