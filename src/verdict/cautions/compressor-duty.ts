/** A compressor that has to run for more of the time than its maker allows. */
import type { RunResult } from '../../run/result.ts';
import { shareText } from '../figures.ts';
import type { Caution } from './caution.ts';

export function compressorDutyCaution({ compressor }: RunResult): Caution | undefined {
  if (compressor === undefined || compressor.duty <= compressor.dutyRating) return undefined;
  const { duty, dutyRating } = compressor;
  return {
    topic: 'Compressor duty',
    text:
      `This engine keeps the compressor running ${shareText(duty)} of the time, and its maker allows ${shareText(dutyRating)}. Motor and head overheat, and oil in a hot delivery pipe ` +
      'chars and can catch fire. Run in spells with rests between them, or ask its maker; the local rules for compressors ' +
      'and their inspection by licensed people come first.',
    severity: 'caution',
  };
}
