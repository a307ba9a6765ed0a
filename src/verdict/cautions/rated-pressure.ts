/** The rating of the weakest part against the highest pressure that can reach it. Only when a rating was given. */
import type { RunResult } from '../../run/result.ts';
import { gaugeText } from '../figures.ts';
import type { Caution } from './caution.ts';

export function ratedPressureCaution({ engine }: RunResult): Caution | undefined {
  const { ratedPressure, highestPressure, atmosphericPressure, supplyPressure } = engine;
  if (ratedPressure === undefined) return undefined;
  const rating = gaugeText(ratedPressure, atmosphericPressure);
  const highest = gaugeText(highestPressure, atmosphericPressure);
  return {
    topic: 'Pressure rating',
    text: [
      `The weakest of hose, fittings and chest is rated for ${rating}, and ${highest} is the highest pressure there is.`,
      holds(ratedPressure, supplyPressure, highestPressure),
      'A rating holds for a sound part at room temperature; the local code and a licensed inspector decide what may be used.',
    ].join(' '),
    severity: ratedPressure < highestPressure ? 'danger' : 'note',
  };
}

function holds(rated: number, supply: number, highest: number): string {
  if (rated < supply)
    return 'It does not even bear the pressure the regulator is set to: change it before anything else.';
  return rated < highest
    ? 'Nothing but the regulator keeps it from bursting: fit a stronger part, or a relief valve set below its rating.'
    : 'It bears that, should the regulator fail.';
}
