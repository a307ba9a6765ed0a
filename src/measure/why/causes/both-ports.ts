/** Admission and exhaust open at once: the air goes straight through. */
import { degreesText, shown } from '../../words.ts';
import type { Cause } from '../cause.ts';
import { STEP_ANGLE } from '../rest-scan.ts';

export const bothPortsCause: Cause = {
  symptoms: ['hisses at rest', 'moves and stops', 'runs only fast'],
  suspects: ({ scan, place, spec }) => {
    const both = scan.filter(({ admission, exhaust }) => admission && exhaust);
    const [first, last] = [both[0], both.at(-1)];
    if (first === undefined || last === undefined) return [];
    const most = Math.max(...both.map(({ airFlowAnr }) => airFlowAnr));
    const lost =
      1 -
      (place.chestPressure - spec.atmosphere.pressure) / (spec.supply.pressure - spec.atmosphere.pressure);
    return [
      {
        cause: 'Both ports open at once',
        weight: place.admission && place.exhaust ? Math.max(0.3, lost) : (both.length * STEP_ANGLE) / Math.PI,
        number: `Admission and exhaust overlap between ${degreesText(first.angle)} and ${degreesText(last.angle)}; up to ${shown(most, 'volume flow', 2)} ANR go straight through.`,
        test: 'With a little air on, turn it slowly by hand with a cord and listen at the exhaust where the rush begins and ends.',
      },
    ];
  },
};
