/** What hisses and is not in the scenario. */
import { shown } from '../../words.ts';
import type { Cause } from '../cause.ts';

/** Half a litre a minute: hardly to be heard [m³/s]. */
const SILENT = 0.5e-3 / 60;

export const unknownLeakCause: Cause = {
  symptoms: ['hisses at rest'],
  suspects: ({ place }) => [
    {
      cause: 'A leak that the scenario does not know: a gasket, a screw, a valve that does not seat',
      weight: place.airFlowAnr < SILENT ? 0.8 : 0.15,
      number: `By the scenario only ${shown(place.airFlowAnr, 'volume flow', 2)} ANR leak at this angle in all; what hisses louder than that is not in it.`,
      test: 'Time the gauge (bench test “pressure decay”) and hold the leak against that figure; then soapy water, joint by joint.',
    },
  ],
};
