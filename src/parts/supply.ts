/** Where the air comes from: a regulator that holds its pressure, a hose, and the chest in front of the valves. */
import { group, optional, quantity } from '../kinds/describe.ts';
import type { Values } from '../kinds/parameter.ts';
import { tubeConductance } from '../gas/conductance.ts';
import type { Gas } from '../gas/gas.ts';
import { conduit, type Passage } from './passage.ts';

export const supplyParameters = {
  pressure: quantity(
    'pressure',
    { min: 20e3, max: 3.1e6 },
    '4 bar gauge',
    'Pressure at the regulator outlet, held whatever the engine takes.',
  ),
  temperature: optional(
    quantity(
      'temperature',
      { min: 230, max: 420 },
      '15 degC',
      'Temperature of the air supplied; the room if not given.',
    ),
  ),
  hose: group('Hose from the regulator to the engine.', {
    bore: quantity(
      'length',
      { min: 1e-3, max: 0.1 },
      '8 mm',
      'Inside diameter of the narrowest long stretch.',
    ),
    length: quantity('length', { min: 0.01, max: 200 }, '3 m', 'Length.'),
  }),
  chest_volume: quantity(
    'volume',
    { min: 1e-7, max: 0.1 },
    '40 cm3',
    'Volume between the hose and the admission valve; the hose itself is added.',
  ),
};

export const supply = group('Regulated compressed air through a hose into a valve chest.', supplyParameters);

export type Supply = Values<typeof supplyParameters>;

/** Volume in front of the admission valve [m³]: chest and hose. */
export function chestVolume({ chest_volume, hose }: Supply): number {
  return chest_volume + (Math.PI / 4) * hose.bore ** 2 * hose.length;
}

export function hosePassage(own: Supply, gas: Gas): Passage {
  return conduit(
    gas,
    { name: 'hose', from: 'supply', to: 'chest' },
    tubeConductance(own.hose.bore, own.hose.length),
  );
}
