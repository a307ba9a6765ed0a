/** Ice in the exhaust, which chokes it little by little. */
import { shown } from '../../words.ts';
import type { Cause } from '../cause.ts';

const FREEZING = 273.15;

export const iceCause: Cause = {
  symptoms: ['runs then dies'],
  suspects: ({ result }) => {
    const { settled, moisture } = result;
    if (settled === undefined) return [];
    const below = FREEZING - settled.coldestExhaust;
    if (below <= 0) return [];
    const water =
      moisture === undefined
        ? ''
        : `, and ${shown(moisture.carriedOn * 3600, 'mass', 2)} of water an hour go through it`;
    return [
      {
        cause: 'Ice in the exhaust port or pipe',
        weight: Math.min(0.9, below / 60) * (moisture === undefined ? 0.3 : 1),
        number: `The exhaust gets as cold as ${shown(settled.coldestExhaust, 'temperature', 2)} by the scenario${water}.`,
        test: 'Shut off, vent, and look into the port right after it dies: if it runs again when the port has been warmed with a rag and warm water, it was ice.',
      },
    ];
  },
};
