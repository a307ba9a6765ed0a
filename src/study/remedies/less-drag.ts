/** Half of all friction: bearings, piston, glands, and what it takes to drive the valve gear. */
import type { GivenSetting } from '../next-changes.ts';
import type { RemedyRule } from './remedy.ts';
import { rungsBy } from './rungs.ts';

const resists = ({ path, parameter }: GivenSetting): boolean =>
  parameter.type === 'quantity' &&
  (path.startsWith('friction.')
    ? parameter.dimension !== 'rotational speed'
    : path.startsWith('valve_gear.') && parameter.dimension === 'torque');

export const lessDrag: RemedyRule = ({ given }, _result) => ({
  what: 'half of all friction',
  rungs: rungsBy(given.filter(resists), [1 / 2]),
});
