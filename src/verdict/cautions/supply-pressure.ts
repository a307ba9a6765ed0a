/** Everything between the compressor and the piston has to stand the supply pressure. */
import type { RunResult } from '../../run/result.ts';
import { gaugeText } from '../figures.ts';
import type { Caution } from './caution.ts';

export function supplyPressureCaution({ engine }: RunResult): Caution {
  const highest = Math.max(engine.supplyPressure, engine.regulatorInlet ?? 0, engine.receiver?.pressure ?? 0);
  return {
    topic: 'Pressure parts',
    text:
      `Hose, fittings, chest and cylinder must be rated for ${gaugeText(highest, engine.atmosphericPressure)}, the ` +
      'highest pressure there is if the regulator fails. Fit a relief valve set below the rating of the weakest part, ' +
      'a shut-off within reach and a way to vent the chest. Test a home-made pressure part with water, not with air, ' +
      'and as your local code or a licensed inspector asks.',
    severity: 'caution',
  };
}
