/** The two faces of an oscillating cylinder. */
import { oscillatingCylinder } from '../../parts/valve-gears/oscillating-cylinder.ts';
import {
  oscillatingCylinderParameters,
  type OscillatingCylinder,
} from '../../parts/valve-gears/oscillating-cylinder-parameters.ts';
import { cylinderFace, standingFace } from '../faces/face-drawings.ts';
import { craftOf, type Made } from './craft.ts';

const adjustment: readonly string[] = [
  'There is nothing to set but the spring: its timing is drilled. Check it before the holes for the pipes are made.',
  'With the crank at either dead centre the port must stand in the middle between the holes and be covered by the land.',
  'Turn forwards until a breath of air at low pressure says that the admission opens, and compare the wheel with the table. If the crank centre stands to one side of the middle line, one stroke opens early and the other late: shift the standing face.',
  'Tighten the spring until the faces just do not lift at the highest pressure; more only costs work.',
];

const make = (own: OscillatingCylinder): Made => ({
  parts: [standingFace(own), cylinderFace(own)],
  adjustment,
  complaints: [],
});

export const oscillatingCylinderCraft = craftOf(oscillatingCylinder, oscillatingCylinderParameters, make);
