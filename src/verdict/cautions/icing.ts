/** Air that leaves below freezing lays down its moisture as ice. The model reckons with dry air and does not see this. */
import type { RunResult } from '../../run/result.ts';
import { celsiusText } from '../figures.ts';
import type { Caution } from './caution.ts';

const FREEZING = 273.15;

export function icingCaution({ settled }: RunResult): Caution | undefined {
  if (settled === undefined || settled.coldestExhaust >= FREEZING) return undefined;
  return {
    topic: 'Icing',
    text:
      `The exhaust gets as cold as ${celsiusText(settled.coldestExhaust)}. Moisture in the air can freeze in the ` +
      'exhaust port and choke it, which this reckoning with dry air does not show. Drain the receiver, dry the air, keep ' +
      'bare skin off the cold metal, and mind what the local rules say about oil and moisture in exhaust air.',
    severity: 'caution',
  };
}
