/** The hub that carries a cam by its slots: a flange keyed to the shaft, with a tapped hole under each slot. */
import type { CamSpools } from '../../parts/valve-gears/cam-spools-parameters.ts';
import type { PartDrawing } from '../drawing/drawing.ts';
import { holeSize } from '../drawing/fits.ts';
import { cross, leader, words } from '../drawing/marks.ts';
import { WALL } from '../drawing/metal.ts';
import { deadCentreWords, inMm, mm } from '../drawing/words.ts';
import { polar } from '../geometry/placing.ts';
import { circle, keyedBore } from '../geometry/shapes.ts';
import { slotMiddles } from './cam-drawing.ts';
import type { CamPlan } from './cam-plan.ts';

const ORIGIN = { x: 0, y: 0 };

export function hubDrawing(
  { cams }: CamSpools,
  { clampRadius }: CamPlan,
  deadCentre: 'TDC' | 'BDC',
): PartDrawing {
  const radius = clampRadius + cams.clamp_screw / 2 + WALL;
  const bore = holeSize(cams.shaft_diameter, '7');
  const screws = `${cams.clamp_screws} × M${mm(cams.clamp_screw)} on Ø${mm(2 * clampRadius)} ±0.1`;
  return {
    id: 'cam-hub',
    name: 'Hub of the cams',
    quantity: 2,
    stock: `steel plate ${inMm(cams.thickness)}, or the flange of a turned hub`,
    thickness: cams.thickness,
    edge: circle(radius),
    openings: [keyedBore(cams.shaft_diameter, cams.key_width, cams.key_depth)],
    holes: slotMiddles(cams.clamp_screws).map((middle) => ({
      centre: polar(clampRadius, middle),
      diameter: cams.clamp_screw,
      finish: 'tap' as const,
      purpose: `M${mm(cams.clamp_screw)}, clamp screw`,
    })),
    marks: [
      ...cross(ORIGIN, radius + 3e-3),
      { type: 'circle', layer: 'centre', centre: ORIGIN, radius: clampRadius },
      words(
        'engrave',
        { x: cams.key_width / 2 + 1e-3, y: cams.shaft_diameter / 2 + 1e-3 },
        deadCentre,
        'start',
        {
          height: 2e-3,
        },
      ),
      ...leader(ORIGIN, radius, 0.6, 10e-3, `Ø${mm(2 * radius)}`),
      ...leader(ORIGIN, cams.shaft_diameter / 2, -0.6, radius - cams.shaft_diameter / 2 + 10e-3, bore),
      ...leader(
        ORIGIN,
        clampRadius + cams.clamp_screw / 2,
        Math.PI + 0.5236,
        radius - clampRadius + 8e-3,
        screws,
      ),
      ...leader(
        { x: 0, y: cams.shaft_diameter / 2 + cams.key_depth },
        0,
        Math.PI - 0.9,
        radius - cams.shaft_diameter / 2 + 6e-3,
        `keyway ${mm(cams.key_width)} H9 × ${mm(cams.key_depth)}`,
      ),
    ],
    notes: [
      `One for each cam. The keyway stands on the line of the mark: with the crank at ${deadCentreWords[deadCentre]} it points along the follower.`,
      'Bore and thread after cutting; the flange must run true to the bore within 0.05 mm.',
    ],
    facts: [
      ['Bore', bore],
      ['Keyway', `${inMm(cams.key_width)} wide, ${inMm(cams.key_depth)} beyond the bore`],
      ['Clamp screws', screws],
    ],
  };
}
