/** A compressor that is too small even for an engine without its largest loss. */
import type { RunResult, SettledCycle } from '../../run/result.ts';
import { airText, shareText } from '../figures.ts';
import type { Suggestion } from './suggestion.ts';

export function compressorShortfall(_cycle: SettledCycle, { compressor }: RunResult): Suggestion | undefined {
  if (compressor === undefined || compressor.keepsUp) return undefined;
  const short = 1 - compressor.deliveryAnr / compressor.demandAnr;
  if (short > 0)
    return {
      share: short,
      text:
        `Try a larger compressor or a lower supply pressure: the engine takes ${airText(compressor.demandAnr)} where the ` +
        `compressor gives ${airText(compressor.deliveryAnr)}, and no single loss in the engine is as large as the difference.`,
    };
  return {
    share: compressor.duty - compressor.dutyRating,
    text:
      `Try a lower supply pressure or a larger compressor: it would run ${shareText(compressor.duty)} of the time and is ` +
      `rated for ${shareText(compressor.dutyRating)}.`,
  };
}
