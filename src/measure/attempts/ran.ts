/** The engine ran steadily and was read. */
import { optional, pureNumber, quantity } from '../../kinds/describe.ts';
import { kindOf } from '../../kinds/kind.ts';
import type { Attempt } from './attempt.ts';
import { entryParameters } from './entry-parameters.ts';

const RPM = (2 * Math.PI) / 60;

/** Nobody reads an exhaust in an attempt; the fit wants an error all the same [K]. */
const UNREAD = 1;

export const ran = kindOf({
  kind: 'ran',
  doc: 'The engine ran steadily and was read.',
  parameters: {
    ...entryParameters,
    supply_pressure: optional(
      quantity('pressure', { min: 5e4, max: 3.1e6 }, '3 bar gauge', 'As in the scenario if not given.'),
    ),
    load_torque: optional(
      quantity(
        'torque',
        { min: 0, max: 10_000 },
        '1.5 N m',
        'Of a brake; the load of the scenario if not given.',
      ),
    ),
    speed: quantity('rotational speed', { min: RPM, max: 20_000 * RPM }, '280 rpm', 'As it was read.'),
    speed_within: quantity(
      'rotational speed',
      { min: 1e-2 * RPM, max: 500 * RPM, default: 5 * RPM },
      '4 rpm',
      'How far that may be out, either way.',
    ),
    air_flow: optional(quantity('volume flow', { min: 1e-7, max: 1 }, '46 L/min', 'As it was read, as ANR.')),
    air_flow_within: pureNumber({ min: 1e-3, max: 0.5, default: 0.05 }, '5 %', 'How far that may be out.'),
    predicted_speed: optional(
      quantity(
        'rotational speed',
        { min: 0, max: 20_000 * RPM },
        '310 rpm',
        'What was foretold at the time.',
      ),
    ),
  },
  build: (own, _context: unknown): Attempt => ({
    happened: 'ran',
    what: own.what,
    when: own.when,
    changed: own.changed,
    conditions: { supplyPressure: own.supply_pressure, loadTorque: own.load_torque, near: own.speed },
    read: { speed: own.speed, ...(own.air_flow === undefined ? {} : { airFlow: own.air_flow }) },
    errors: {
      speed: own.speed_within / 2,
      airFlow: (own.air_flow_within * (own.air_flow ?? 1)) / 2,
      exhaustTemperature: UNREAD,
    },
    foretold: own.predicted_speed,
  }),
});
