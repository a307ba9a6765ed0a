/**
 * The compressor and receiver in the shed: delivery, pressures, and what the maker allows.
 *
 * A piston compressor gives less the higher it delivers, as the air left in its clearance expands before fresh air gets
 * in (clearance law of volumetric efficiency, any text on thermodynamics of machines):
 *
 *   η_v = 1 + c − c (p₂/p₁)^(1/n)        delivery(p) = delivery(stated pressure) · η_v(p)/η_v(stated pressure)
 *
 * c is the clearance over the swept volume, n the exponent of the expansion, p₁ the room. Everything else that takes air
 * from the swept volume, warm valves and leaking rings, is in the delivery that was stated.
 */
import type { Gas } from '../gas/gas.ts';
import { count, optional, optionalGroup, pureNumber, quantity } from '../kinds/describe.ts';
import type { Complaint } from '../kinds/kind.ts';
import type { Values } from '../kinds/parameter.ts';
import { pow } from '../numerics/elementary/power.ts';

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
  stated_pressure: optional(
    quantity(
      'pressure',
      { min: 20e3, max: 5e6 },
      '7 bar gauge',
      'Pressure it delivers against when it takes in that much; half-way between cut-in and cut-out if not given. A displacement is stated at 0 bar gauge.',
      'Leave it out for a delivery that you timed; else from the plate or the papers, where the delivery stands.',
    ),
  ),
  clearance: pureNumber(
    { min: 0, max: 0.3, default: 0.05 },
    '5 %',
    'Space left over its piston as a share of the swept volume, by which it gives less at a higher pressure; 5 % is usual (common practice), 1 % stands for a machine of two stages, 0 for a delivery that never changes.',
    'Nobody measures this. Time the receiver over a low and a high stretch: 5 % falls by 6 % from 6 to 8 bar gauge.',
  ),
  expansion_exponent: pureNumber(
    { min: 1, max: 1.4, default: 1.3 },
    '1.3',
    'Exponent n of the expansion of the air left in that space; 1.2 to 1.35 is usual (common practice).',
    'Nobody measures this, and it matters little: leave it out.',
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
  starts_per_hour: count(
    { min: 1, max: 600, default: 10 },
    'Starts an hour that its motor is allowed; 10 is usual for motors of about 1 to 4 kW (common practice).',
    'From its papers.',
  ),
};

export const compressor = optionalGroup('The compressor that fills the receiver.', compressorParameters);

export type Compressor = Values<typeof compressorParameters>;

/** Air taken in over swept volume, for a clearance share, a ratio of pressures ≥ 1 and an exponent; never negative. */
export function volumetricEfficiency(clearance: number, ratio: number, exponent: number): number {
  return Math.max(0, 1 + clearance - clearance * pow(ratio, 1 / exponent));
}

/** The pressure at which its delivery is what it is said to be [Pa]. */
const statedPressure = ({ stated_pressure, cut_in, cut_out }: Compressor): number =>
  stated_pressure ?? (cut_in + cut_out) / 2;

/** Free air [m³/s, at the room] that it takes in while it delivers at a pressure [Pa absolute]. */
export function freeAirDelivery(own: Compressor, roomPressure: number): (pressure: number) => number {
  const efficiency = (pressure: number): number =>
    volumetricEfficiency(own.clearance, Math.max(1, pressure / roomPressure), own.expansion_exponent);
  const displacement = own.free_air_delivery / efficiency(statedPressure(own));
  return (pressure) => displacement * efficiency(pressure);
}

const bar = (pressure: number): string => `${(pressure / 1e5).toFixed(2)} bar absolute`;
const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;

/** What a compressor is set against. */
interface Surroundings {
  readonly supplyPressure: number;
  readonly roomPressure: number;
  readonly gas: Gas;
}

export function compressorComplaints(
  own: Compressor,
  { supplyPressure, roomPressure, gas }: Surroundings,
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
  found.push(...clearanceComplaints(own, roomPressure));
  return found;
}

/** With too much clearance the air in it is only squeezed and let go again, and none gets out at the highest pressure. */
function clearanceComplaints(own: Compressor, roomPressure: number): readonly Complaint[] {
  const highest = Math.max(own.cut_out, statedPressure(own));
  const largest = 1 / (pow(Math.max(1, highest / roomPressure), 1 / own.expansion_exponent) - 1);
  if (own.clearance < largest) return [];
  return [
    {
      path: ['clearance'],
      expected: `below ${percent(largest)}, or no air at all gets out at ${bar(highest)}`,
      received: percent(own.clearance),
    },
  ];
}
