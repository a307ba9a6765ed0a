/** What ports that open and shut by crank angle are described by. */
import { crankPosition, group, optional, optionalGroup, pureNumber, quantity } from '../../kinds/describe.ts';
import type { Values } from '../../kinds/parameter.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';
import { crankAngle } from '../crank-positions.ts';
import type { PartContext } from '../part-context.ts';
import type { Window } from './window.ts';
import { measuring } from '../measuring.ts';

const DEGREE = Math.PI / 180;

/** Steeper ones are beyond any valve, and a step beyond any integrator. */
export const SHORTEST_RAMP = 1 * DEGREE;

const slitParameters = {
  width: quantity(
    'length',
    { min: 1e-4, max: 1 },
    '30 mm',
    'Width of the slit, across the flow.',
    'The length of the edge that seals.',
  ),
  height: quantity(
    'length',
    { min: 1e-6, max: 1e-3 },
    '15 um',
    'Height of the slit.',
    'Half the play of the part that shuts, or time the gauge and try until the leak agrees.',
  ),
  length: quantity(
    'length',
    { min: 1e-4, max: 0.2 },
    '3 mm',
    'Length of the slit, along the flow.',
    'How far the land covers the port when it is shut.',
  ),
};

const portParameters = (opens: string, closes: string) => ({
  area: optional(
    quantity(
      'area',
      { min: 1e-9, max: 0.1 },
      '40 mm2',
      'Narrowest cross-section fully open; give this or `hole_diameter`.',
      'The largest drill shank that passes gives the area of a round opening; of a slot, length times ' +
        'width.',
    ),
  ),
  hole_diameter: optional(
    quantity(
      'length',
      { min: 5e-5, max: 0.3 },
      '7 mm',
      'Diameter of a round hole of that cross-section; give this or `area`.',
      measuring.holeDiameter,
    ),
  ),
  opens: crankPosition(opens, 'Where the port begins to open.', measuring.opens),
  closes: crankPosition(closes, 'Where the port has just shut.', measuring.closes),
  ramp: quantity(
    'angle',
    { min: SHORTEST_RAMP, max: Math.PI, default: 15 * DEGREE },
    '15 deg',
    'Crank angle from shut to fully open, and from fully open to shut.',
    'Degree disc: from the first breath to where turning on opens the port no further.',
  ),
  discharge_coefficient: pureNumber(
    { min: 0.3, max: 1, default: 0.7 },
    '0.7',
    'Of the port; sharp edges 0.6–0.8.',
    measuring.dischargeCoefficient,
  ),
  leak: optionalGroup(
    'What leaks past the shut port, as the straight slit that would leak as much.',
    slitParameters,
  ),
});

export const windowsParameters = {
  admission: group('The port that lets air into the cylinder.', portParameters('-5 deg', '50 % of stroke')),
  exhaust: group('The port that lets air out.', portParameters('170 deg', '90 % of return stroke')),
  drive_torque: quantity(
    'torque',
    { min: 0, max: 100, default: 0 },
    '0.05 N m',
    'Mean torque at the crankshaft that driving the gear takes.',
    measuring.driveTorque,
  ),
};

export type Windows = Values<typeof windowsParameters>;
export type WindowPort = Windows['admission'];
export type PortName = 'admission' | 'exhaust';

export const portNames: readonly PortName[] = ['admission', 'exhaust'];

export function windowOf({ opens, closes, ramp }: WindowPort, { crank }: PartContext): Window {
  return { opens: crankAngle(crank, opens), closes: crankAngle(crank, closes), ramp };
}

/** Geometric area fully open [m²]. */
export const fullArea = ({ area, hole_diameter }: WindowPort): number =>
  area ?? (Math.PI / 4) * square(hole_diameter ?? 0);
