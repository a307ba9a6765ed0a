/** The wheel cannot carry the engine over where the air does not push. */
import { square } from '../../../numerics/elementary/whole-powers.ts';
import { degreesText, plain, rpm, shown, workText } from '../../words.ts';
import type { Cause, Evidence, Suspect } from '../cause.ts';

/** A turn by hand [rad/s]. */
const BY_HAND = 2 * Math.PI;

/** Speed below which the wheel's energy is less than the work that is missing. */
const leastSpeed = ({ stretch, inertia }: Evidence): number =>
  Math.sqrt((2 * (stretch?.work ?? 0)) / inertia);

function suspects(evidence: Evidence): Suspect[] {
  const { stretch, inertia, result, symptom } = evidence;
  if (stretch === undefined) return [];
  const least = leastSpeed(evidence);
  const settled = result.settled?.speed;
  const stored = 0.5 * inertia * square(BY_HAND);
  const weight =
    symptom === 'runs only fast' && settled !== undefined
      ? Math.min(1, least / settled)
      : stretch.work / (stretch.work + stored);
  return [
    {
      cause: 'A wheel too light for the stretch without push',
      weight,
      number:
        `From ${degreesText(stretch.from)} to ${degreesText(stretch.to)} the air falls short by ${workText(stretch.work)} of the work to get ` +
        `over; the wheel, ${shown(inertia, 'moment of inertia')}, holds that only above ${plain(rpm(least), 2)} rpm.`,
      test:
        symptom === 'runs only fast'
          ? 'Strap known weights evenly and firmly to the rim, guard on: the slowest speed that it keeps must fall.'
          : `Spin it by cord to well over ${plain(rpm(least), 2)} rpm and then open the air: if it now gets round, it is the wheel.`,
    },
  ];
}

export const deadStretchCause: Cause = { symptoms: ['moves and stops', 'runs only fast'], suspects };
