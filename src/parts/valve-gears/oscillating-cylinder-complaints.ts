/** Oscillating cylinders whose holes cannot be drilled, or never or always meet, in words. */
import type { Complaint } from '../../kinds/kind.ts';
import { sin } from '../../numerics/elementary/trigonometric.ts';
import { greatestSwing } from '../oscillating-travel.ts';
import type { PartContext } from '../part-context.ts';
import { degrees, mm } from './in-words.ts';
import {
  oscillatingTrain,
  swingHole,
  type HoleName,
  type OscillatingCylinder,
} from './oscillating-cylinder-parameters.ts';
import { singleActingOnly } from './single-acting-only.ts';
import { touchAngle } from './swing-hole.ts';

/** Metal that must be left between holes, rim and pivot: half a millimetre, common practice, no source. */
const SMALLEST_WALL = 0.5e-3;

function circleComplaints(own: OscillatingCylinder): Complaint[] {
  const reach =
    Math.max(own.port_diameter, own.admission.hole_diameter, own.exhaust.hole_diameter) / 2 + SMALLEST_WALL;
  const smallest = own.pivot_diameter / 2 + reach;
  const largest = own.face_diameter / 2 - reach;
  if (own.hole_circle_radius >= smallest && own.hole_circle_radius <= largest) return [];
  return [
    {
      path: ['hole_circle_radius'],
      expected:
        smallest <= largest
          ? `between ${mm(smallest)} and ${mm(largest)}, so that 0.5 mm is left to pivot and rim`
          : `a face of at least ${mm(2 * (smallest + reach))} diameter for these holes and this pivot`,
      received: mm(own.hole_circle_radius),
    },
  ];
}

/** The port has to run into the hole and out again once a turn, without passing through to the far side. */
function meetingComplaints(own: OscillatingCylinder, name: HoleName, context: PartContext): Complaint[] {
  const reach = greatestSwing(oscillatingTrain(context));
  const touch = touchAngle(swingHole(own, name, context));
  const { angle } = own[name];
  if (angle > Math.abs(reach - touch) && angle < reach + touch) return [];
  return [
    {
      path: [name, 'angle'],
      expected: `between ${degrees(Math.abs(reach - touch))} and ${degrees(reach + touch)}, so that the port meets this hole once a turn`,
      received: degrees(angle),
      hint: `The cylinder swings ${degrees(reach)} either way with this stroke and this distance of the trunnion (rod_length).`,
    },
  ];
}

function apartComplaints(own: OscillatingCylinder): Complaint[] {
  const { admission, exhaust, hole_circle_radius } = own;
  const needed = (admission.hole_diameter + exhaust.hole_diameter) / 2 + SMALLEST_WALL;
  const apart = 2 * hole_circle_radius * sin((admission.angle + exhaust.angle) / 2);
  if (apart >= needed) return [];
  return [
    {
      path: ['exhaust', 'angle'],
      expected: `the holes at least ${mm(needed)} apart, centre to centre, so that 0.5 mm is left between them`,
      received: `${mm(apart)} apart`,
    },
  ];
}

export function oscillatingCylinderComplaints(
  own: OscillatingCylinder,
  context: PartContext,
): readonly Complaint[] {
  return [
    ...singleActingOnly('an oscillating cylinder', context),
    ...circleComplaints(own),
    ...meetingComplaints(own, 'admission', context),
    ...meetingComplaints(own, 'exhaust', context),
    ...apartComplaints(own),
  ];
}
