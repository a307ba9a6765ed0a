/** The compressor cannot keep up, and the pressure sags. */
import { square } from '../../../numerics/elementary/whole-powers.ts';
import { plain, shown } from '../../words.ts';
import type { Cause } from '../cause.ts';

export const compressorCause: Cause = {
  symptoms: ['runs then dies'],
  suspects: ({ result }) => {
    const { compressor, settled } = result;
    const test =
      'Read the gauge of the receiver in the moment it dies; time how fast the receiver fills (bench test “pump-up”).';
    const cause = 'A compressor that does not keep up';
    if (settled === undefined) return [];
    if (compressor === undefined) {
      const number = `Running, it takes ${shown(settled.airFlowAnr, 'volume flow', 2)} ANR by the scenario, which names no compressor to hold that against.`;
      return [{ cause, weight: 0.3, number, test }];
    }
    const { demandAnr, deliveryAnr, minutesUntilSag } = compressor;
    const until =
      minutesUntilSag === undefined ? '' : `; a full receiver lasts ${plain(minutesUntilSag, 2)} minutes`;
    const number = `It takes ${shown(demandAnr, 'volume flow', 2)} ANR of the ${shown(deliveryAnr, 'volume flow', 2)} that are delivered by the scenario${until}.`;
    return [{ cause, weight: Math.min(1, square(demandAnr / deliveryAnr)), number, test }];
  },
};
