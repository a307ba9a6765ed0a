/**
 * The drawing of one cam. It is placed as the crank stands at top dead centre: the mark points up, along the follower.
 * The follower then goes round the cam against its turning, by the crank angle.
 */
import { forwardAngle, FULL_TURN } from '../../parts/crank-positions.ts';
import { camMotion } from '../../parts/cams/cam.ts';
import { restOf, type CamShape } from '../../parts/cams/cam-shape.ts';
import type { CamSpools, SpoolName } from '../../parts/valve-gears/cam-spools-parameters.ts';
import type { DrawingTable, Hole, Mark, PartDrawing } from '../drawing/drawing.ts';
import { holeSize } from '../drawing/fits.ts';
import { cross, leader, line, turningArrow, words } from '../drawing/marks.ts';
import { deadCentreWords, degrees, inMm, mm } from '../drawing/words.ts';
import type { Outline } from '../geometry/outline.ts';
import { mirrored, polar, turned } from '../geometry/placing.ts';
import { arcSlot, keyedBore } from '../geometry/shapes.ts';
import { camOutline } from './cam-outline.ts';
import type { CamPlan } from './cam-plan.ts';

const UP = Math.PI / 2;
const ORIGIN = { x: 0, y: 0 };

/** +1 when crank angles run anticlockwise round the drawing, which they do when the cam turns clockwise. */
const senseOf = ({ cams }: CamSpools): number => (cams.turning === 'clockwise' ? 1 : -1);

/** The cam's outline as drawn, with the top dead centre up. */
function placedOutline(shape: CamShape, sense: number): Outline {
  const upright = turned(camOutline(shape), UP + shape.cam.riseBegins);
  return sense > 0 ? upright : mirrored(upright);
}

/** Directions of the slots' middles: away from the mark, one straight opposite if their number is odd. */
export const slotMiddles = (count: number): number[] =>
  Array.from({ length: count }, (_, i) => UP + (FULL_TURN * (i + 0.5)) / count);

function fixingShapes(
  { cams }: CamSpools,
  { clampRadius, slotWidth }: CamPlan,
): Pick<PartDrawing, 'openings' | 'holes'> {
  if (cams.fixing === 'keyway')
    return { openings: [keyedBore(cams.shaft_diameter, cams.key_width, cams.key_depth)], holes: [] };
  const bore: Hole = {
    centre: ORIGIN,
    diameter: cams.shaft_diameter,
    finish: 'ream',
    purpose: 'shaft, H8 sliding',
  };
  return {
    openings: slotMiddles(cams.clamp_screws).map((middle) =>
      arcSlot(clampRadius, slotWidth, middle - cams.adjustment / 2, cams.adjustment),
    ),
    holes: [bore],
  };
}

/** Where rise and fall begin and end, by the number that the drawing gives them. */
const stationsOf = ({
  riseBegins,
  flank,
  closingFlank,
  duration,
}: CamShape['cam']): readonly (readonly [string, number])[] => [
  ['rise begins', riseBegins],
  ['full lift', riseBegins + flank],
  ['fall begins', riseBegins + duration - closingFlank],
  ['at rest again', riseBegins + duration],
];

/** Thin lines along the follower at these places, numbered outside. */
function stationMarks({ shape }: CamPlan, sense: number): Mark[] {
  const { cam, baseRadius } = shape;
  const outside = baseRadius + cam.lift + 4e-3;
  return stationsOf(cam).flatMap(([, angle], i) => {
    const direction = UP + sense * angle;
    const { x, y } = polar(outside + 2.5e-3, direction);
    return [
      line('reference', polar(baseRadius * 0.86, direction), polar(outside, direction)),
      words('reference', { x, y: y - 1.2e-3 }, String(i + 1), 'middle'),
    ];
  });
}

function camMarks(gear: CamSpools, plan: CamPlan, deadCentre: string): Mark[] {
  const { cams } = gear;
  const { shape, clampRadius } = plan;
  const { cam, baseRadius } = shape;
  const sense = senseOf(gear);
  const outer = baseRadius + cam.lift;
  // Words go to the quiet side, opposite the nose.
  const quiet = UP + sense * (cam.riseBegins + cam.duration / 2) + Math.PI;
  const bySlots = cams.fixing === 'clamp slots';
  return [
    ...cross(ORIGIN, outer + 3e-3),
    { type: 'circle', layer: 'reference', centre: ORIGIN, radius: baseRadius },
    line('engrave', polar(baseRadius * 0.72, UP), polar(baseRadius - 1.5e-3, UP)),
    words('engrave', { x: 1e-3, y: baseRadius * 0.78 }, deadCentre, 'start', { height: 2e-3 }),
    ...stationMarks(plan, sense),
    ...leader(ORIGIN, baseRadius, quiet + 0.5, 14e-3, `base circle Ø${mm(2 * baseRadius)}`),
    ...leader(ORIGIN, outer, quiet + Math.PI, 15e-3, `R${mm(outer)} ±0.02`),
    ...leader(
      ORIGIN,
      cams.shaft_diameter / 2,
      quiet - 0.5,
      baseRadius - cams.shaft_diameter / 2 + 14e-3,
      bySlots
        ? holeSize(cams.shaft_diameter, '8')
        : `${holeSize(cams.shaft_diameter, '7')}, keyway ${mm(cams.key_width)} × ${mm(cams.key_depth)}`,
    ),
    ...(bySlots
      ? [
          { type: 'circle', layer: 'centre', centre: ORIGIN, radius: clampRadius } as const,
          ...leader(
            ORIGIN,
            clampRadius,
            quiet,
            baseRadius - clampRadius + 14e-3,
            `${cams.clamp_screws} slots ${mm(plan.slotWidth)} wide, ${degrees(cams.adjustment)} long, on Ø${mm(2 * clampRadius)}`,
          ),
        ]
      : []),
    ...turningArrow(ORIGIN, outer + 13e-3, UP + sense * 0.35, -sense * 0.7, 'turns'),
  ];
}

const TABLE_STEP = (5 * Math.PI) / 180;

/** Lift, and where a cutter shaped like the follower stands, every five degrees of the flanks. */
function liftTable(shape: CamShape): DrawingTable {
  const { cam, follower, baseRadius } = shape;
  const first = Math.ceil(cam.riseBegins / TABLE_STEP - 1e-9);
  const last = Math.floor((cam.riseBegins + cam.duration) / TABLE_STEP + 1e-9);
  const moving = Array.from({ length: last - first + 1 }, (_, i) => (first + i) * TABLE_STEP).filter(
    (angle) => {
      const since = angle - cam.riseBegins;
      return since <= cam.flank + TABLE_STEP || since >= cam.duration - cam.closingFlank - TABLE_STEP;
    },
  );
  const rest = restOf(baseRadius, follower);
  const cutter =
    follower.face === 'flat'
      ? 'shaft to face [mm]'
      : `shaft to centre of a Ø${mm(2 * follower.radius)} cutter [mm]`;
  return {
    caption: 'To mill it on a dividing head, or to try the finished cam with a dial indicator',
    head: ['crank', 'lift [mm]', cutter],
    rows: moving.map((angle) => {
      const { lift } = camMotion(cam, angle - cam.riseBegins);
      return [degrees(forwardAngle(0, angle), 0), (lift * 1e3).toFixed(3), ((rest + lift) * 1e3).toFixed(3)];
    }),
  };
}

function camFacts(gear: CamSpools, name: SpoolName, plan: CamPlan): PartDrawing['facts'] {
  const { shape, check } = plan;
  const { cam, follower, baseRadius } = shape;
  const { cams } = gear;
  return [
    [
      'At the numbers',
      stationsOf(cam)
        .map(([what, angle], i) => `${i + 1} ${what} ${degrees(forwardAngle(0, angle))}`)
        .join(', '),
    ],
    [
      'Law of rise and fall',
      `${cam.law.name}, ${degrees(cam.flank)} up and ${degrees(cam.closingFlank)} down`,
    ],
    [
      'Lift of the cam',
      `${inMm(cam.lift, 3)}, lash ${inMm(cam.lash, 3)}, lift of the spool ${inMm(cam.lift - cam.lash, 3)}`,
    ],
    ['Base circle', `Ø${inMm(2 * baseRadius)}`],
    [
      'Follower',
      follower.face === 'flat'
        ? `flat face, at least ${inMm(2 * check.aside + 2e-3, 1)} wide: the contact wanders ${inMm(check.aside, 1)} to either side`
        : `roller Ø${inMm(2 * follower.radius)}${follower.offset === 0 ? ', over the shaft' : `, axis ${inMm(follower.offset)} beside the shaft`}`,
    ],
    ['Sharpest rounding', inMm(check.sharpest)],
    ...(check.hollow === undefined
      ? []
      : [
          [
            'Tightest hollow',
            `radius ${inMm(check.hollow, 1)}; cutter, wheel and file must have a smaller one`,
          ] as const,
        ]),
    ...(follower.face === 'flat'
      ? []
      : [
          [
            'Largest pressure angle',
            `${degrees(check.pressureAngle)} (limit ${degrees(cams.largest_pressure_angle)})`,
          ] as const,
        ]),
    ...(cams.fixing === 'keyway'
      ? []
      : [
          [
            'Range of the slots',
            `${degrees(cams.adjustment)}: every event of the ${name} may come up to ${degrees(cams.adjustment / 2)} earlier or later`,
          ] as const,
        ]),
  ];
}

export function camDrawing(
  gear: CamSpools,
  name: SpoolName,
  plan: CamPlan,
  deadCentre: 'TDC' | 'BDC',
): PartDrawing {
  const { cams } = gear;
  const plate = fixingShapes(gear, plan);
  return {
    id: `${name}-cam`,
    name: `Cam of the ${name} spool`,
    quantity: 1,
    stock: `steel plate ${inMm(cams.thickness)}, the edge hardened if it can be`,
    thickness: cams.thickness,
    edge: placedOutline(plan.shape, senseOf(gear)),
    ...plate,
    marks: camMarks(gear, plan, deadCentre),
    notes: [
      `Seen on the side from which the shaft turns ${cams.turning}. Engrave the mark on this side.`,
      `With the crank at ${deadCentreWords[deadCentre]} the mark points along the follower's axis; crank angles count from there.`,
      ...(cams.follower === 'roller'
        ? ['Keep the roller in line with the cam: a pin in a groove must hold the spool from turning.']
        : []),
      'Leave the flanks 0.1 mm proud when cutting, then file and stone to the line; blend without flats.',
      ...(cams.fixing === 'keyway'
        ? ['The keyway is cut on the mark: once cut, the timing is fixed.']
        : [
            `Clamp with ${cams.clamp_screws} × M${mm(cams.clamp_screw)} and washers; pin it to the hub when the timing is right.`,
          ]),
    ],
    facts: camFacts(gear, name, plan),
    table: liftTable(plan.shape),
  };
}
