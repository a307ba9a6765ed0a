/** The turned spool, lying, its stopping face at x = 0 and the cam to the right. */
import type { SpoolName } from '../../parts/valve-gears/cam-spools-parameters.ts';
import type { Mark, PartDrawing } from '../drawing/drawing.ts';
import { dimension, line } from '../drawing/marks.ts';
import { inMm, mm } from '../drawing/words.ts';
import { polygon } from '../geometry/shapes.ts';
import type { ChosenSpring } from '../springs/spring-choice.ts';
import { rodSize } from './sizes.ts';
import type { SpoolPlan } from './spool-plan.ts';

/** The pilot ends where the collar has the way of the lift and the over-travel left: it is the stop at full lift. */
const pilotLength = ({ lift, overTravel }: SpoolPlan, { fittedLength }: ChosenSpring): number =>
  fittedLength - lift - overTravel;

/** Half outline above the axis, from the pilot's end to the cam, as steps of diameter. */
function steps(plan: SpoolPlan, pilot: number): readonly (readonly [end: number, diameter: number])[] {
  return [
    [-plan.collarThickness, plan.pilotDiameter],
    [0, plan.collarDiameter],
    [plan.waistBegins, plan.diameter],
    [plan.waistEnds, plan.waistDiameter],
    [plan.spoolLength, plan.diameter],
  ].map(([end = 0, diameter = 0]) => [Math.max(end, -plan.collarThickness - pilot), diameter] as const);
}

/** Outline and edges of the spool; the shifted one of the drawing of its block is the same. */
export function spoolShape(plan: SpoolPlan, spring: ChosenSpring, layer: Mark['layer']): Mark[] {
  const pilot = pilotLength(plan, spring);
  const own = steps(plan, pilot);
  const begin = -plan.collarThickness - pilot;
  const below = own.flatMap(([end, diameter], i) => {
    const from = i === 0 ? begin : own[i - 1]![0];
    return [
      [from, -diameter / 2],
      [end, -diameter / 2],
    ] as const;
  });
  const above = below.toReversed().map(([x, y]) => [x, -y] as const);
  const edges = own.slice(0, -1).map(([end, diameter], i) => {
    const half = Math.max(diameter, own[i + 1]![1]) / 2;
    return line(layer, { x: end, y: -half }, { x: end, y: half });
  });
  return [{ type: 'outline', layer, outline: polygon([...below, ...above]) }, ...edges];
}

function spoolMarks(plan: SpoolPlan, spring: ChosenSpring): Mark[] {
  const pilot = pilotLength(plan, spring);
  const begin = -plan.collarThickness - pilot;
  const collar = plan.collarDiameter / 2;
  const half = plan.diameter / 2;
  const below = (x: number, depth: number, text: string): Mark[] =>
    dimension({ x: 0, y: -collar }, { x, y: -half }, 0, -depth, text);
  const across = (x: number, diameter: number, offset: number, text: string): Mark[] =>
    dimension({ x, y: -diameter / 2 }, { x, y: diameter / 2 }, Math.PI / 2, -offset, text);
  return [
    ...spoolShape(plan, spring, 'outline'),
    line('centre', { x: begin - 4e-3, y: 0 }, { x: plan.spoolLength + 4e-3, y: 0 }),
    ...below(plan.waistBegins, 8e-3, `${mm(plan.waistBegins, 3)} ±0.02`),
    ...below(plan.waistEnds, 15e-3, `${mm(plan.waistEnds, 3)} ±0.05`),
    ...below(plan.spoolLength, 22e-3, `${mm(plan.spoolLength, 3)} ±0.1`),
    ...dimension({ x: begin, y: collar }, { x: -plan.collarThickness, y: collar }, 0, 15e-3, mm(pilot)),
    ...dimension(
      { x: -plan.collarThickness, y: collar },
      { x: 0, y: collar },
      0,
      8e-3,
      mm(plan.collarThickness),
    ),
    ...across(plan.spoolLength, plan.diameter, 9e-3, rodSize(plan)),
    ...dimension(
      { x: (plan.waistBegins + plan.waistEnds) / 2, y: -plan.waistDiameter / 2 },
      { x: (plan.waistBegins + plan.waistEnds) / 2, y: plan.waistDiameter / 2 },
      Math.PI / 2,
      0,
      `Ø${mm(plan.waistDiameter)}`,
    ),
    ...dimension(
      { x: begin, y: -plan.pilotDiameter / 2 },
      { x: begin, y: plan.pilotDiameter / 2 },
      Math.PI / 2,
      16e-3,
      `Ø${mm(plan.pilotDiameter)}`,
    ),
    ...dimension(
      { x: begin, y: -collar },
      { x: begin, y: collar },
      Math.PI / 2,
      25e-3,
      `Ø${mm(plan.collarDiameter)}`,
    ),
  ];
}

export function spoolDrawing(name: SpoolName, plan: SpoolPlan, spring: ChosenSpring): PartDrawing {
  return {
    id: `${name}-spool`,
    name: `Spool of the ${name}`,
    quantity: 1,
    stock: 'silver steel or bronze bar; in one piece, or with the collar pinned on',
    openings: [],
    holes: [],
    marks: spoolMarks(plan, spring),
    notes: [
      'Every length is measured from the face of the collar towards the cam; with the valve shut it rests on the block. The cam is on the right.',
      'Keep the four edges of the waist sharp: they are the valve. Break all others.',
      'Two or three fine grooves round each land, 0.3 mm deep, centre the spool; keep them 1 mm away from the waist.',
    ],
    facts: [
      ['Diameter', rodSize(plan)],
      ['Radial clearance in its bore', clearanceWords(plan)],
      [
        'Edge of the waist that opens the port',
        `${inMm(plan.waistBegins, 3)} from the collar, ${inMm(plan.lap, 3)} (lap) past the edge of the hole at ${inMm(plan.holeCentre + plan.hole / 2, 3)}`,
      ],
      [
        'Lift in service',
        `${inMm(plan.lift, 3)}; the pilot stops it at ${inMm(plan.lift + plan.overTravel, 3)}`,
      ],
    ],
  };
}

function clearanceWords({ clearance }: SpoolPlan): string {
  const [least, mean, most] = [clearance.least, clearance.mean, clearance.most].map((own) =>
    (own * 1e6).toFixed(1),
  );
  return least === most
    ? `${String(mean)} µm`
    : `${String(least)} to ${String(most)} µm, reckoned with ${String(mean)} µm`;
}
