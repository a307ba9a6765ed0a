/** What loads that grow with a power of the speed have in common: a torque known at one speed. */
import { quantity } from '../../kinds/describe.ts';

const RPM = (2 * Math.PI) / 60;

export const torqueAtSpeed = {
  torque: quantity(
    'torque',
    { min: 0, max: 10_000 },
    '1.5 N m',
    'Torque at the crankshaft at the stated speed.',
  ),
  at_speed: quantity(
    'rotational speed',
    { min: 0.1 * RPM, max: 20_000 * RPM },
    '300 rpm',
    'Speed at which the load takes that torque.',
  ),
};
