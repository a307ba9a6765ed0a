/** What loads that grow with a power of the speed have in common: a torque known at one speed. */
import { quantity } from '../../kinds/describe.ts';

const RPM = (2 * Math.PI) / 60;

export const torqueAtSpeed = {
  torque: quantity(
    'torque',
    { min: 0, max: 10_000 },
    '1.5 N m',
    'Torque at the crankshaft at the stated speed.',
    'Drive the machine with a motor on a balanced frame, or wind a cord on its shaft and let a known weight fall ' +
      'until the speed is steady: weight times radius of the cord, times the ratio to the crankshaft.',
  ),
  at_speed: quantity(
    'rotational speed',
    { min: 0.1 * RPM, max: 20_000 * RPM },
    '300 rpm',
    'Speed at which the load takes that torque.',
    'A revolution counter, or turns counted for a minute. The torque beside it has to be that of the same speed.',
  ),
};
