/** What the faces of an oscillating cylinder are described by. */
import { choice, group, pureNumber, quantity } from '../../kinds/describe.ts';
import type { Values } from '../../kinds/parameter.ts';
import type { OscillatingTrain } from '../oscillating-travel.ts';
import type { PartContext } from '../part-context.ts';
import { oscillatingCylinderMaking } from './oscillating-cylinder-making.ts';
import type { SwingHole } from './swing-hole.ts';
import { measuring } from '../measuring.ts';

const holeParameters = {
  hole_diameter: quantity(
    'length',
    { min: 2e-4, max: 0.05 },
    '6 mm',
    'Diameter of the hole in the standing face.',
    measuring.holeDiameter,
  ),
  angle: quantity(
    'angle',
    { min: (0.5 * Math.PI) / 180, max: Math.PI / 2 },
    '13 deg',
    'Angle at the trunnion between the middle line and the centre of the hole.',
    'From the marking out: half the distance of the two hole centres over the radius of their circle is ' +
      'the sine of this angle.',
  ),
};

export const oscillatingCylinderParameters = {
  port_diameter: quantity(
    'length',
    { min: 2e-4, max: 0.05 },
    '6 mm',
    'Diameter of the hole in the face of the cylinder.',
    measuring.holeDiameter,
  ),
  hole_circle_radius: quantity(
    'length',
    { min: 1e-3, max: 0.5 },
    '32 mm',
    'From the centre of the trunnion to the centre of each hole.',
    'Callipers: trunnion to near edge of the hole, plus half of each.',
  ),
  face_diameter: quantity(
    'length',
    { min: 4e-3, max: 1 },
    '100 mm',
    'Outer diameter of the round face about the trunnion; for another shape, of the largest circle within it.',
    'Callipers, or a compass from the trunnion to the nearest edge, twice.',
  ),
  pivot_diameter: quantity(
    'length',
    { min: 5e-4, max: 0.2 },
    '8 mm',
    'Diameter of the trunnion where it passes through the faces.',
    'Callipers on the trunnion.',
  ),
  face_gap: quantity(
    'length',
    { min: 0, max: 1e-3 },
    '6 um',
    'Height of the gap left between the faces, the spring pressing; zero for a perfect fit.',
    'Marking blue on one face, rubbed on the other: faces that mark all over are within some 5 µm ' +
      '(common practice, no source). Or time the gauge with the holes covered.',
  ),
  discharge_coefficient: pureNumber(
    { min: 0.3, max: 1, default: 0.7 },
    '0.7',
    'Of the opening between port and hole; sharp edges 0.6–0.8.',
    measuring.dischargeCoefficient,
  ),
  face_force: quantity(
    'force',
    { min: 0, max: 10_000, default: 0 },
    '60 N',
    'Force of the spring that presses the faces together; the air between them takes some of it away.',
    'Spring balance on the trunnion, air off: the pull at which the faces just part.',
  ),
  friction_coefficient: pureNumber(
    { min: 0, max: 1, default: 0.15 },
    '0.15',
    'Of one face on the other; oiled metal 0.1–0.2.',
    'Spring balance that keeps the face turning at a known radius, over the face force and its mean ' +
      'radius; rarely worth it.',
  ),
  reversing_tap: choice(
    ['none', 'fitted'],
    'A tap that exchanges the pipes of supply and exhaust, so that the engine runs the other way.',
    'none',
  ),
  admission: group(
    'The hole that brings air; it lies to the side to which the port swings on the outward stroke.',
    holeParameters,
  ),
  exhaust: group(
    'The hole that lets air out; it lies to the side to which the port swings on the return.',
    holeParameters,
  ),
  making: oscillatingCylinderMaking,
};

export type OscillatingCylinder = Values<typeof oscillatingCylinderParameters>;
export type HoleName = 'admission' | 'exhaust';

/** The rod length of the cylinder stands for the distance from crank centre to trunnion. */
export const oscillatingTrain = ({ crank }: PartContext): OscillatingTrain => ({
  crankRadius: crank.crankRadius,
  trunnionDistance: crank.rodLength,
});

export function swingHole(own: OscillatingCylinder, name: HoleName, context: PartContext): SwingHole {
  return {
    train: oscillatingTrain(context),
    holeCircle: own.hole_circle_radius,
    portDiameter: own.port_diameter,
    holeDiameter: own[name].hole_diameter,
    position: own[name].angle,
  };
}
