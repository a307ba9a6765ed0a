/** The rating of the weakest part against the highest pressure that can reach it. Only when a rating was given. */
import type { EngineFacts, RunResult } from '../../run/result.ts';
import { gaugeText } from '../figures.ts';
import type { Caution, Severity } from './caution.ts';
import { highestPressure, highestPressureText, upstreamIsKnown } from './highest-pressure.ts';

export function ratedPressureCaution({ engine }: RunResult): Caution | undefined {
  const { ratedPressure, atmosphericPressure } = engine;
  if (ratedPressure === undefined) return undefined;
  const [judgement, severity] = judged(engine, ratedPressure);
  return {
    topic: 'Pressure rating',
    text:
      `The weakest of hose, fittings and chest is rated for ${gaugeText(ratedPressure, atmosphericPressure)}, against ` +
      `${highestPressureText(engine)}. ${judgement} A rating holds for a sound part at room temperature; the local code ` +
      'and a licensed inspector decide what may be used.',
    severity,
  };
}

function judged(engine: EngineFacts, rated: number): [string, Severity] {
  if (rated < engine.supplyPressure)
    return [
      'It does not even bear the pressure the regulator is set to: change it before anything else.',
      'danger',
    ];
  if (rated < highestPressure(engine))
    return [
      'Nothing but the regulator keeps it from bursting: fit a stronger part, or a relief valve set below its rating.',
      'danger',
    ];
  return upstreamIsKnown(engine)
    ? ['It bears that.', 'note']
    : ['It bears the pressure set; fit a relief valve for the rest.', 'caution'];
}
