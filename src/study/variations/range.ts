/** Values between two ends, evenly or in equal ratios. */
import { choice, count, text } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import { log } from '../../numerics/elementary/logarithm.ts';
import { pow } from '../../numerics/elementary/power.ts';
import { pathParameters } from './path-parameters.ts';
import { rampComplaints, rampOf } from './ramp.ts';
import { rampText, roundShare, type Ramp, type Range, type Variation } from './variation.ts';

type Spacing = 'even' | 'ratio';

/** Values are rounded to a share of the whole range, or of the step to the next one, that nobody would notice. */
const PARTS = 10_000;
const PARTS_OF_STEP = 500;

/** Both ends exactly as they are written. */
export function rangeBetween({ from, to, unit }: Ramp, spacing: Spacing): Range {
  const inside = (share: number): number =>
    spacing === 'ratio' ? from * pow(to / from, share) : from + share * (to - from);
  return {
    from,
    to,
    unit,
    valueAt: (share) => (share <= 0 ? from : share >= 1 ? to : inside(share)),
    shareOf: (value) =>
      spacing === 'ratio' ? log(value / from) / log(to / from) : (value - from) / (to - from),
  };
}

export function rangeOf(
  paths: readonly string[],
  ramp: Ramp,
  points: number,
  spacing: Spacing = 'even',
): Variation {
  const range = rangeBetween(ramp, spacing);
  const rounded = (share: number, parts: number): string =>
    rampText(range.valueAt(roundShare(range, share, parts)), ramp.unit);
  const level = (i: number): string => rounded(points === 1 ? 0 : i / (points - 1), PARTS_OF_STEP * points);
  const at = (share: number): string => rounded(share, PARTS);
  return { paths, count: points, level, at, range, unit: ramp.unit };
}

const spacingComplaints = (spacing: Spacing, { from, to }: Ramp): readonly Complaint[] =>
  spacing === 'ratio' && from * to <= 0
    ? [{ path: ['spacing'], expected: 'even, for a range that reaches zero or passes it', received: 'ratio' }]
    : [];

export const range = kindOf({
  kind: 'range',
  doc: 'Values between two ends.',
  parameters: {
    ...pathParameters,
    from: text(80, 'One end, with its unit.'),
    to: text(80, 'The other end, in the same unit.'),
    points: count(
      { min: 2, max: 100_000, default: 11 },
      'How many values a grid or a list takes, both ends among them.',
    ),
    spacing: choice(
      ['even', 'ratio'],
      'Whether each value differs from the last by the same amount, or by the same factor.',
      'even',
    ),
  },
  complaints: (own): readonly Complaint[] => {
    const ofEnds = rampComplaints(own);
    return ofEnds.length > 0 ? ofEnds : spacingComplaints(own.spacing, rampOf(own));
  },
  build: (own, _context: null): Variation =>
    rangeOf([own.setting, ...own.also], rampOf(own), own.points, own.spacing),
});
