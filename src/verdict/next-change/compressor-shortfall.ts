/** A compressor that is too small even for an engine without its largest loss. */
import type { RunResult, SettledCycle } from '../../run/result.ts';
import { airText, gaugeText, shareText } from '../figures.ts';
import type { Suggestion } from './suggestion.ts';

export function compressorShortfall(
  _cycle: SettledCycle,
  { compressor, engine }: RunResult,
): Suggestion | undefined {
  if (compressor === undefined) return undefined;
  const { demandAnr, deliveryAnr, duty, dutyRating } = compressor;
  const { gas } = engine;
  if (deliveryAnr < demandAnr)
    return {
      share: 1 - deliveryAnr / demandAnr,
      text:
        `Try a larger compressor or, as far as it still runs, a lower supply pressure: the engine takes ${airText(demandAnr, gas)} where the ` +
        `compressor gives ${airText(deliveryAnr, gas)}, and no single loss in the engine is as large as the difference.`,
      effect: lowerPressure(deliveryAnr / demandAnr, engine),
    };
  return {
    share: duty - dutyRating,
    text:
      `Try a larger compressor or, as far as it still runs, a lower supply pressure: it has to run ${shareText(duty)} of the time and its maker ` +
      `allows ${shareText(dutyRating)}.`,
    effect: lowerPressure(dutyRating / duty, engine),
  };
}

/** Engine and leaks take air about as the supply's absolute pressure. */
function lowerPressure(share: number, { supplyPressure, atmosphericPressure }: RunResult['engine']): string {
  const enough = gaugeText(Math.max(share * supplyPressure, atmosphericPressure), atmosphericPressure);
  return `An engine takes air about in proportion to its absolute pressure: the compressor would suffice for some ${enough}.`;
}
