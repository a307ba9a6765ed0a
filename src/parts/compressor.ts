/** The compressor and receiver in the shed, as far as a settled engine asks: its delivery, pressures and duty. */
import type { Gas } from '../gas/gas.ts';
import { optionalGroup, pureNumber, quantity } from '../kinds/describe.ts';
import type { Complaint } from '../kinds/kind.ts';
import type { Values } from '../kinds/parameter.ts';

export const compressorParameters = {
  free_air_delivery: quantity(
    'volume flow',
    { min: 1e-6, max: 10 },
    '150 L/min',
    'Air it takes in at the room, not its piston displacement; time the receiver from one pressure to another to find it.',
    'Engine shut off, time the receiver between two pressures below cut-out: V Δp/(p_room t). 50 L from ' +
      "5 to 7 bar gauge in 38 s is 50 L × 2 bar/(1.013 bar × 38 s) = 2.6 L/s = 156 L/min. Makers' figures " +
      'are often higher.',
  ),
  receiver_volume: quantity(
    'volume',
    { min: 1e-4, max: 100 },
    '50 L',
    'Volume of the receiver.',
    'From its plate.',
  ),
  cut_in: quantity(
    'pressure',
    { min: 20e3, max: 5e6 },
    '6 bar gauge',
    'Pressure at which it starts.',
    'Let air off slowly and read the gauge when it starts.',
  ),
  cut_out: quantity(
    'pressure',
    { min: 20e3, max: 5e6 },
    '8 bar gauge',
    'Pressure at which it stops, receiver full.',
    'Read the gauge when it stops.',
  ),
  duty_rating: pureNumber(
    { min: 0.05, max: 1, default: 0.5 },
    '50 %',
    'Share of the time its maker allows it to run; half is usual for small piston machines.',
    'From its papers: S3 50 % on the motor plate means half of the time.',
  ),
};

export const compressor = optionalGroup('The compressor that fills the receiver.', compressorParameters);

export type Compressor = Values<typeof compressorParameters>;

const bar = (pressure: number): string => `${(pressure / 1e5).toFixed(2)} bar absolute`;

export function compressorComplaints(
  own: Compressor,
  supplyPressure: number,
  gas: Gas,
): readonly Complaint[] {
  const found: Complaint[] = [];
  if (gas.origin !== 'room air')
    found.push({
      path: [],
      expected: `no compressor with ${gas.name}, which comes from bottles`,
      received: 'a compressor, which takes in air from the room',
    });
  if (own.cut_out <= own.cut_in)
    found.push({
      path: ['cut_out'],
      expected: `above the cut-in pressure, ${bar(own.cut_in)}`,
      received: bar(own.cut_out),
    });
  if (own.cut_in < supplyPressure)
    found.push({
      path: ['cut_in'],
      expected: `at least the supply pressure, ${bar(supplyPressure)}, or the regulator runs out of air each cycle`,
      received: bar(own.cut_in),
    });
  return found;
}
