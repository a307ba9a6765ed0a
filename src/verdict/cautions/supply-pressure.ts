/** Everything between the compressor or bottle and the piston has to stand what comes if the regulator fails. */
import type { RunResult } from '../../run/result.ts';
import type { Caution } from './caution.ts';
import { highestPressureText } from './highest-pressure.ts';

export function supplyPressureCaution({ engine }: RunResult): Caution {
  return {
    topic: 'Pressure parts',
    text:
      `Hose, fittings, chest and cylinder must be rated for ${highestPressureText(engine)}. Fit a relief valve set below ` +
      'the rating of the weakest part, a shut-off within reach and a way to vent the chest. Test a home-made pressure part ' +
      'with water, not with air, and as your local code or a licensed inspector asks.',
    severity: 'caution',
  };
}
