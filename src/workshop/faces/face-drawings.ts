/**
 * The two faces of an oscillating cylinder, seen on the standing one from the side of the cylinder: trunnion at the
 * origin, cover up, crank down. The port lies above the trunnion, so that it swings to the left on the way out when the
 * crank turns clockwise.
 */
import { square } from '../../numerics/elementary/whole-powers.ts';
import type { OscillatingCylinder } from '../../parts/valve-gears/oscillating-cylinder-parameters.ts';
import type { Hole, Mark, PartDrawing } from '../drawing/drawing.ts';
import { cross, leader, line } from '../drawing/marks.ts';
import { degrees, inMm, mm } from '../drawing/words.ts';
import { polar } from '../geometry/placing.ts';
import { circle } from '../geometry/shapes.ts';

const ORIGIN = { x: 0, y: 0 };
const UP = Math.PI / 2;

const pivot = (own: OscillatingCylinder, purpose: string): Hole => ({
  centre: ORIGIN,
  diameter: own.pivot_diameter,
  finish: 'ream',
  purpose,
});

function faceMarks(own: OscillatingCylinder): Mark[] {
  const radius = own.face_diameter / 2;
  return [
    ...cross(ORIGIN, radius + 3e-3),
    {
      type: 'arc',
      layer: 'centre',
      arc: { ...ORIGIN, radius: own.hole_circle_radius, start: UP - 0.8, sweep: 1.6 },
    },
    ...leader(ORIGIN, radius, -0.6, 8e-3, `Ø${mm(2 * radius)}`),
    ...leader(
      ORIGIN,
      own.pivot_diameter / 2,
      Math.PI + 0.6,
      radius - own.pivot_diameter / 2 + 8e-3,
      `Ø${mm(own.pivot_diameter)} H7`,
    ),
    ...leader(
      ORIGIN,
      own.hole_circle_radius,
      UP - 0.8,
      radius - own.hole_circle_radius + 8e-3,
      `R${mm(own.hole_circle_radius)}`,
    ),
  ];
}

export function standingFace(own: OscillatingCylinder): PartDrawing {
  const sense = own.making.turning === 'clockwise' ? 1 : -1;
  const holes = [
    ['admission', own.admission, UP + sense * own.admission.angle],
    ['exhaust', own.exhaust, UP - sense * own.exhaust.angle],
  ] as const;
  return {
    id: 'standing-face',
    name: 'Standing face',
    quantity: 1,
    stock: `brass or cast-iron plate ${inMm(own.making.standing_thickness)}`,
    thickness: own.making.standing_thickness,
    edge: circle(own.face_diameter / 2),
    openings: [],
    holes: [
      pivot(own, 'trunnion, H7'),
      ...holes.map(([name, { hole_diameter }, direction]): Hole => ({
        centre: polar(own.hole_circle_radius, direction),
        diameter: hole_diameter,
        finish: 'drill',
        purpose: name,
      })),
    ],
    marks: [
      ...faceMarks(own),
      ...holes.flatMap(([, { hole_diameter }, direction]) => [
        ...cross(polar(own.hole_circle_radius, direction), hole_diameter / 2 + 1.5e-3),
        line('centre', ORIGIN, polar(own.hole_circle_radius + hole_diameter, direction)),
      ]),
    ],
    notes: [
      `Seen from the side of the cylinder, from where the crank turns ${own.making.turning}. Cover up, crank down; the port lies on the side of the cover.`,
      'With the port on the side of the crank, turn the drawing upside down.',
      'Drill both holes and the trunnion in one setting; a tenth of a millimetre here is a degree or two of the crank.',
      'Lap the face flat on plate glass; no countersinks.',
    ],
    facts: holes.map(
      ([name, { hole_diameter, angle }]) =>
        [
          `${name} hole`,
          `Ø${inMm(hole_diameter)}, ${degrees(angle, 2)} from the middle line on R${mm(own.hole_circle_radius)}, ${((Math.PI / 4) * square(hole_diameter) * 1e6).toFixed(1)} mm²`,
        ] as const,
    ),
  };
}

export function cylinderFace(own: OscillatingCylinder): PartDrawing {
  const port = { x: 0, y: own.hole_circle_radius };
  return {
    id: 'cylinder-face',
    name: 'Face of the cylinder',
    quantity: 1,
    stock: `bronze plate ${inMm(own.making.cylinder_thickness)}, or the flat of the cylinder itself`,
    thickness: own.making.cylinder_thickness,
    edge: circle(own.face_diameter / 2),
    openings: [],
    holes: [
      pivot(own, 'trunnion, fixed'),
      { centre: port, diameter: own.port_diameter, finish: 'drill', purpose: 'port to the cylinder' },
    ],
    marks: [...faceMarks(own), ...cross(port, own.port_diameter / 2 + 1.5e-3)],
    notes: [
      'The cover end is up. The trunnion stands square to this face.',
      `A spring on the trunnion presses the faces together with ${own.face_force.toFixed(0)} N.`,
      'Lap it on the standing face last, with the trunnion in place.',
    ],
    facts: [['Port', `Ø${inMm(own.port_diameter)} on R${mm(own.hole_circle_radius)}`]],
  };
}
