/**
 * A leak that was measured: shut the air in, and time how the gauge falls. It becomes the laminar gap that would have let
 * the pressure fall just so (gas/pressure-decay.ts).
 *
 * Whatever the real leak loses at entrance and exit is taken as part of its resistance, and the gap is given a section so
 * wide that nothing is added to that: good near the pressures of the test, too large a leak far above them. The test lets
 * the air out into the room, with whatever lies behind the leak open to it.
 */
import { optional, quantity } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import type { Values } from '../../kinds/parameter.ts';
import { decayResistance } from '../../gas/pressure-decay.ts';
import type { PartContext } from '../part-context.ts';
import { gap, type Passage } from '../passage.ts';
import { between, leakPlaces } from './leak-places.ts';

/** Wide enough that neither entrance loss nor choking is felt [m²]. */
const WIDE = 1;

const parameters = {
  between,
  volume: quantity(
    'volume',
    { min: 1e-8, max: 0.1 },
    '100 cm3',
    'What held the air in the test: cylinder or chest with its passages, hose and gauge.',
    'Fill it with water or oil from a measuring cup, up to the valve that was shut for the test; add ' +
      'the hose to the gauge.',
  ),
  from_pressure: quantity(
    'pressure',
    { min: 5e4, max: 3e6 },
    '3 bar gauge',
    'What the gauge said at first, when it had settled after shutting off.',
    'Wait half a minute after shutting off: the air warms while it fills, and falls as it cools.',
  ),
  to_pressure: quantity(
    'pressure',
    { min: 5e4, max: 3e6 },
    '2 bar gauge',
    'What it said at the end.',
    'Stop while the gauge still reads well; from 3 to 2 bar is good.',
  ),
  time: quantity(
    'time',
    { min: 1, max: 1e6 },
    '40 s',
    'How long that took.',
    'Stop watch. Below five seconds the hand is too slow: use a larger volume.',
  ),
  temperature: optional(
    quantity(
      'temperature',
      { min: 230, max: 400 },
      '18 degC',
      'Of the air in the volume; as the room if not given.',
      'The room, after the wait.',
    ),
  ),
};

const bar = (pressure: number): string => `${Number((pressure / 1e5).toPrecision(5))} bar absolute`;

function complaints(
  { from_pressure: from, to_pressure: to }: Values<typeof parameters>,
  { atmosphericPressure }: PartContext,
): readonly Complaint[] {
  const path = ['to_pressure'];
  if (to >= from) return [{ path, expected: `less than at first, ${bar(from)}`, received: bar(to) }];
  if (to > atmosphericPressure) return [];
  return [
    {
      path,
      expected: `more than the pressure of the room, ${bar(atmosphericPressure)}, where the gauge stops to fall`,
      received: bar(to),
      hint: 'Read the gauge while it still falls; half the first pressure is a good end.',
    },
  ];
}

function build(own: Values<typeof parameters>, context: PartContext): Passage {
  const { gas, atmosphericPressure, atmosphericTemperature } = context;
  const decay = {
    volume: own.volume,
    from: own.from_pressure,
    to: own.to_pressure,
    against: atmosphericPressure,
    time: own.time,
  };
  const viscosity = gas.viscosity(own.temperature ?? atmosphericTemperature);
  const ends = { ...leakPlaces[own.between], name: `measured leak from ${own.between}` };
  return gap(gas, ends, decayResistance(decay, viscosity), WIDE);
}

export const pressureDecayLeak = kindOf({
  kind: 'pressure decay',
  doc: 'A leak measured by shutting air in and timing the fall of its pressure.',
  parameters,
  complaints,
  build,
});
