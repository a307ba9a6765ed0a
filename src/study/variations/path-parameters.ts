/** Which values of the scenario a variation, a limit or a tolerance is about. */
import { text, textList } from '../../kinds/describe.ts';

const MOST_PATHS = 8;

export const pathParameters = {
  setting: text(
    300,
    'Path of the value in the scenario, keys joined by points, places of lists counted from 0: leaks.0.clearance.',
  ),
  also: textList(
    { min: 0, max: MOST_PATHS },
    'valve_gear.exhaust.clearance',
    'Paths of further values that are the same.',
  ),
};
