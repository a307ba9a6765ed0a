/** Two ends of a range as they are written, with one unit, and what may be wrong with them. */
import type { Complaint } from '../../kinds/kind.ts';
import { readNumber } from '../../quantity/number.ts';
import type { Ramp } from './variation.ts';

interface Ends {
  readonly from: string;
  readonly to: string;
}

export function rampComplaints({ from, to }: Ends): readonly Complaint[] {
  const [low, high] = [readNumber(from, '10 mm'), readNumber(to, '10 mm')];
  const found: Complaint[] = [];
  const expected = 'a number with its unit';
  if (!low.ok)
    found.push({ path: ['from'], expected, received: `"${from}" (${low.reason})`, hint: low.hint });
  if (!high.ok) found.push({ path: ['to'], expected, received: `"${to}" (${high.reason})`, hint: high.hint });
  if (!low.ok || !high.ok) return found;
  if (low.rest !== high.rest)
    return [
      {
        path: ['to'],
        expected: low.rest === '' ? 'a number without unit, as in "from"' : `the unit of "from", ${low.rest}`,
        received: `"${to}"`,
      },
    ];
  return low.value === high.value
    ? [{ path: ['to'], expected: 'another value than "from"', received: `"${to}"` }]
    : [];
}

/** Of ends that nothing is wrong with. */
export function rampOf({ from, to }: Ends): Ramp {
  const [low, high] = [readNumber(from, ''), readNumber(to, '')];
  if (!low.ok || !high.ok) throw new Error('ends of a range were not checked');
  return { from: low.value, to: high.value, unit: low.rest };
}
