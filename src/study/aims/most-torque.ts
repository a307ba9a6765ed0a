/**
 * The most torque at a speed. The load of the scenario makes way for a brake that lets the engine up to the speed freely
 * and then holds it, 1 N m for each rpm above: the mean torque it settles with is what the engine gives there.
 */
import { quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import type { Aim } from './aim.ts';

const RPM = (2 * Math.PI) / 60;

export const mostTorque = kindOf({
  kind: 'most torque',
  doc: 'The most torque at a speed, whatever the scenario drives.',
  parameters: {
    at_speed: quantity('rotational speed', { min: 1 * RPM, max: 20_000 * RPM }, '200 rpm', 'The speed.'),
  },
  build: ({ at_speed }, _context: null): Aim => {
    const rpm = Number((at_speed / RPM).toPrecision(6));
    return {
      words: `the most torque at ${rpm} rpm`,
      measure: 'torque',
      better: 'more',
      settings: [
        { path: 'load.kind', value: 'formula' },
        { path: 'load.torque', value: `rpm - ${rpm}` },
      ],
    };
  },
});
