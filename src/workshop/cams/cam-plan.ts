/** The sizes of one cam: follower, base circle and fixing, as given or chosen; and what cannot be made. */
import type { Complaint } from '../../kinds/kind.ts';
import { checkCam, type CamCheck } from '../../parts/cams/cam-check.ts';
import { restOf, type CamShape } from '../../parts/cams/cam-shape.ts';
import { followerOf, smallestCamRadius } from '../../parts/valve-gears/cam-spools-base-circle.ts';
import { camOf, type CamSpools, type SpoolName } from '../../parts/valve-gears/cam-spools-parameters.ts';
import type { PartContext } from '../../parts/part-context.ts';
import { clearanceHole, headDiameter, WALL } from '../drawing/metal.ts';
import { degrees, inMm } from '../drawing/words.ts';

export interface CamPlan {
  readonly shape: CamShape;
  readonly check: CamCheck;
  /** Radius of the circle of the clamp screws [m]. */
  readonly clampRadius: number;
  /** Width of the slots for the clamp screws [m]. */
  readonly slotWidth: number;
}

type Cams = CamSpools['cams'];

const smallestClampRadius = (cams: Cams): number =>
  cams.shaft_diameter / 2 + 2e-3 + headDiameter(cams.clamp_screw) / 2;

/** A keyway or the slots must lie within the base circle, with metal round them. */
function leastRadius(cams: Cams, clampRadius: number, slotWidth: number): number {
  if (cams.fixing === 'keyway') return cams.shaft_diameter / 2 + cams.key_depth + WALL;
  return clampRadius + slotWidth / 2 + WALL;
}

export type CamPlanning =
  | { readonly ok: true; readonly plan: CamPlan }
  | { readonly ok: false; readonly complaints: readonly Complaint[] };

const refused = (...complaints: Complaint[]): CamPlanning => ({ ok: false, complaints });

export function planCam(gear: CamSpools, name: SpoolName, context: PartContext): CamPlanning {
  const { cams } = gear;
  const cam = camOf(gear, name, context);
  const follower = followerOf(gear);
  const slotWidth = clearanceHole(cams.clamp_screw);
  const clampRadius = cams.clamp_circle === undefined ? smallestClampRadius(cams) : cams.clamp_circle / 2;
  const fixing = fixingComplaints(cams, clampRadius, slotWidth);
  if (fixing.length > 0) return refused(...fixing);
  const room = leastRadius(cams, clampRadius, slotWidth);
  const smallest = smallestCamRadius(gear, name, context, room);
  if (smallest === undefined)
    return refused({
      path: [name, 'flank'],
      expected: 'a flank for which there is a base circle of less than a metre',
      received: degrees(gear[name].flank),
      hint: 'Take a longer flank, less lift or a larger `largest_pressure_angle`.',
    });
  const wanted =
    cams.base_circle === undefined ? Math.ceil(smallest * 2e3 - 1e-3) / 2e3 : cams.base_circle / 2;
  const reachable = restOf(wanted, follower) > 0;
  const shape: CamShape = { cam, follower, baseRadius: wanted };
  const check = reachable ? checkCam(shape) : undefined;
  if (check === undefined || wanted < smallest - 1e-6)
    return refused({
      path: ['cams', 'base_circle'],
      expected: `at least ${inMm((2 * Math.ceil(smallest * 2e4)) / 2e4, 1)} for the ${name} cam`,
      received: `${inMm(2 * wanted)}${check === undefined ? '' : `, ${shortfall(check, cams, room)}`}`,
      hint: 'A longer flank, less lift or another `cam_law` allow a smaller cam.',
    });
  return { ok: true, plan: { shape, check, clampRadius, slotWidth } };
}

/** What a base circle that is too small brings. */
function shortfall(check: CamCheck, cams: Cams, room: number): string {
  if (check.sharpest <= 0)
    return 'which is undercut: the cam would lose its nose and no longer lift as wanted';
  if (check.sharpest < cams.smallest_radius)
    return `which leaves a radius of ${inMm(check.sharpest)} where \`smallest_radius\` asks for ${inMm(cams.smallest_radius)}`;
  if (check.pressureAngle > cams.largest_pressure_angle)
    return `where the pressure angle reaches ${degrees(check.pressureAngle)}, above \`largest_pressure_angle\``;
  return `which leaves no ${inMm(WALL)} of metal round the fixing, ${inMm(2 * room, 1)} across`;
}

function fixingComplaints(cams: Cams, clampRadius: number, slotWidth: number): Complaint[] {
  if (cams.key_width >= 0.6 * cams.shaft_diameter)
    return [
      {
        path: ['cams', 'key_width'],
        expected: `less than six tenths of the shaft, ${inMm(0.6 * cams.shaft_diameter)}`,
        received: inMm(cams.key_width),
      },
    ];
  if (cams.fixing === 'keyway') return [];
  const smallest = smallestClampRadius(cams);
  if (clampRadius < smallest - 1e-9)
    return [
      {
        path: ['cams', 'clamp_circle'],
        expected: `at least ${inMm(2 * smallest, 1)}, so that the screw heads clear the shaft`,
        received: inMm(2 * clampRadius),
      },
    ];
  const pitch = (2 * Math.PI) / cams.clamp_screws;
  const most = pitch - (slotWidth + WALL) / clampRadius;
  if (cams.adjustment <= most) return [];
  return [
    {
      path: ['cams', 'adjustment'],
      expected: `at most ${degrees(most)} with ${cams.clamp_screws} slots on this circle, ${inMm(WALL)} of metal left between them`,
      received: degrees(cams.adjustment),
      hint: 'Fewer screws or a larger `clamp_circle` allow more.',
    },
  ];
}
