/** The block that a spool slides in: cut along its bore, and seen on its end, with the shut spool in place. */
import type { SpoolName } from '../../parts/valve-gears/cam-spools-parameters.ts';
import type { Mark, PartDrawing } from '../drawing/drawing.ts';
import { cross, dimension, leader, line, words } from '../drawing/marks.ts';
import { inMm, mm } from '../drawing/words.ts';
import { moved } from '../geometry/placing.ts';
import { roundedRectangle } from '../geometry/shapes.ts';
import type { ChosenSpring } from '../springs/spring-choice.ts';
import { boreSize } from './sizes.ts';
import { spoolShape } from './spool-drawing.ts';
import type { SpoolPlan } from './spool-plan.ts';

function sectionMarks(plan: SpoolPlan): Mark[] {
  const { blockLength: length, blockWidth: width, diameter, hole, holeCentre } = plan;
  const [half, bore] = [width / 2, diameter / 2];
  const level = (y: number): Mark => line('outline', { x: 0, y }, { x: length, y });
  const upright = (x: number): Mark[] => [
    line('outline', { x, y: bore }, { x, y: half }),
    line('outline', { x, y: -half }, { x, y: -bore }),
  ];
  return [
    { type: 'outline', layer: 'outline', outline: moved(roundedRectangle(length, width, 0), length / 2, 0) },
    level(bore),
    level(-bore),
    ...upright(holeCentre - hole / 2),
    ...upright(holeCentre + hole / 2),
    line('centre', { x: -4e-3, y: 0 }, { x: length + 4e-3, y: 0 }),
    line('centre', { x: holeCentre, y: -half - 3e-3 }, { x: holeCentre, y: half + 3e-3 }),
    ...dimension({ x: 0, y: -half }, { x: holeCentre, y: -half }, 0, -9e-3, `${mm(holeCentre, 3)} ±0.02`),
    ...dimension({ x: 0, y: -half }, { x: length, y: -half }, 0, -17e-3, `${mm(length, 3)} ±0.1`),
    ...dimension(
      { x: holeCentre - hole / 2, y: half },
      { x: holeCentre + hole / 2, y: half },
      0,
      7e-3,
      `Ø${mm(hole)} right through`,
    ),
  ];
}

function endMarks(plan: SpoolPlan): Mark[] {
  const centre = { x: plan.blockLength + 24e-3 + plan.blockWidth / 2, y: 0 };
  const half = plan.blockWidth / 2;
  return [
    {
      type: 'outline',
      layer: 'outline',
      outline: moved(roundedRectangle(plan.blockWidth, plan.blockWidth, 0), centre.x, centre.y),
    },
    { type: 'circle', layer: 'outline', centre, radius: plan.diameter / 2 },
    ...[-1, 1].map((side) =>
      line(
        'hidden',
        { x: centre.x + (side * plan.hole) / 2, y: -half },
        { x: centre.x + (side * plan.hole) / 2, y: half },
      ),
    ),
    ...cross(centre, half + 3e-3),
    ...leader(centre, plan.diameter / 2, 0.9, half + 2e-3, `${boreSize(plan)} right through`),
    ...dimension(
      { x: centre.x - half, y: -half },
      { x: centre.x + half, y: -half },
      0,
      -9e-3,
      mm(plan.blockWidth),
    ),
    words('dimension', { x: centre.x, y: -half - 18e-3 }, 'seen from the cam'),
  ];
}

export function blockDrawing(name: SpoolName, plan: SpoolPlan, spring: ChosenSpring): PartDrawing {
  const opening = Math.min(plan.hole, plan.lift - plan.lap);
  return {
    id: `${name}-block`,
    name: `Block of the ${name} spool`,
    quantity: 1,
    stock: `bronze or cast iron, ${mm(plan.blockWidth)} × ${mm(plan.blockWidth)} × ${mm(plan.blockLength)} mm`,
    openings: [],
    holes: [],
    marks: [...sectionMarks(plan), ...spoolShape(plan, spring, 'reference'), ...endMarks(plan)],
    notes: [
      'Cut along the bore; the shut spool lies in it in thin dashes. The cam is on the right.',
      'Drill the cross hole before the bore is finished, then ream, hone or lap the bore, so that no burr is left at the hole.',
      'Threads for the pipes and the screws that hold the block are left to you: keep them out of the lands.',
    ],
    facts: [
      ['Bore', boreSize(plan)],
      [
        'Overlap with the valve shut (lap)',
        `${inMm(plan.lap, 3)} ±0.04, by the tolerances of spool and block`,
      ],
      ['Land from the hole to the left face', inMm(plan.holeCentre - plan.hole / 2, 3)],
      ['The hole is uncovered at full lift by', `${inMm(opening)} of its ${inMm(plan.hole)}`],
      [
        'Stop and spring seat',
        `a plate ${inMm(spring.fittedLength + plan.collarThickness)} in front of the left face; the pilot meets it ${inMm(plan.overTravel)} beyond full lift`,
      ],
    ],
  };
}
